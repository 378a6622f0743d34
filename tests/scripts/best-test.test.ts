import { expect, test } from 'vitest';
import { bestTest } from '../../scripts/sheets/best-test.ts';
import type { HonestSheet } from '../../scripts/sheets/honest-sheets.ts';
import type { Sheet } from '../../scripts/sheets/sheet-text.ts';
import { randomSource } from '../../src/statistics/random.ts';

/** Readings of 100 units that scatter by one, each by itself. */
function bench(number: number, count: number): HonestSheet {
  const again = (run: number) => {
    const { normal } = randomSource(`bench ${number}, run ${run}`);
    return sheetOf(Array.from({ length: count }, () => 100 + normal()));
  };
  return { kind: 'even', number, sheet: again(0), again };
}

const sheetOf = (levels: readonly number[]): Sheet => ({
  method: 'soundLevel',
  columns: ['distance', 'soundLevel'],
  rows: levels.map((level) => ['1000', String(level)]),
  run: {},
});

const levelsOf = ({ rows }: Sheet) => rows.map(([, level]) => Number(level));

/** The share of benches of so many readings in which one is found that is off by some standard deviations. */
function foundOf(count: number, off: number): number {
  const benches = Array.from({ length: 400 }, (_, number) => bench(number, count));
  const isFound = bestTest(benches, Math.max(off, 2) / 100);
  const found = benches.filter((each) => {
    const [first = 0, ...others] = levelsOf(each.sheet);
    return isFound(each, sheetOf([first + off, ...others]));
  });
  return found.length / benches.length;
}

// The power of the two-sided normal test at 2 %, for n readings at 2 %/n each: Phi(d - z) + Phi(-d - z), z 2.326 for one, 2.713 for three.
test.each([
  [1, 2, 0.372],
  [1, 3, 0.75],
  [1, 5, 0.996],
  [3, 3, 0.613],
])(
  'of %d readings one that is off by %d standard deviations is found as often as normal tests find it',
  (count, off, power) => {
    expect(Math.abs(foundOf(count, off) - power)).toBeLessThan(0.08);
  },
);

test('of sheets that nobody altered about 2 % are found', () => {
  const share = foundOf(1, 0);
  expect(share).toBeGreaterThan(0.002);
  expect(share).toBeLessThan(0.05);
});
