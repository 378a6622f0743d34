import { expect, test } from 'vitest';
import { bestTest } from '../../scripts/sheets/best-test.ts';
import type { HonestSheet } from '../../scripts/sheets/honest-sheets.ts';
import type { Sheet } from '../../scripts/sheets/sheet-text.ts';
import { randomSource } from '../../src/statistics/random.ts';

/** One reading of 100 units that scatters by one. */
function bench(number: number): HonestSheet {
  const again = (run: number) => sheetOf(100 + randomSource(`bench ${number}, run ${run}`).normal());
  return { kind: 'one reading', number, sheet: again(0), again };
}

const sheetOf = (level: number): Sheet => ({
  method: 'soundLevel',
  columns: ['distance', 'soundLevel'],
  rows: [['1000', String(level)]],
  run: {},
});

const benches = Array.from({ length: 400 }, (_, number) => bench(number));
const levelOf = ({ rows }: Sheet) => Number(rows[0]?.[1]);

function foundOf(share: number, shift: number): number {
  const isFound = bestTest(benches, share);
  return (
    benches.filter((each) => isFound(each, sheetOf(levelOf(each.sheet) + shift))).length / benches.length
  );
}

// The power of the two-sided normal test at 2 %, whose points are -2.326 and 2.326: Phi(d - 2.326) + Phi(-d - 2.326).
test.each([
  [0, 0.02],
  [2, 0.372],
  [3, 0.75],
  [5, 0.996],
])(
  'one reading that is off by %d standard deviations is found as often as the normal test finds it',
  (off, power) => {
    expect(Math.abs(foundOf(Math.max(off, 2) / 100, off) - power)).toBeLessThan(0.08);
  },
);
