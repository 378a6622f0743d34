import { expect, test } from 'vitest';
import { simulateSetPoint } from '../../../scripts/methods/simulate-set-point.ts';
import { coverageOf } from '../../../scripts/methods/simulated-bench.ts';

test('checks of set temperatures hold the truth 92 times in 100 or more', { tags: 'long' }, () => {
  const { refused, rows } = coverageOf('setPointCheck', simulateSetPoint, 1600);
  expect(refused).toBe(0);
  // A kind has 100 benches or more, so that two standard deviations of its share are 5 %.
  for (const { covered } of rows) expect(covered).toBeGreaterThan(0.9);
  const three = rows.filter(({ kind }) => kind === '3 or 4');
  const covered = three.reduce((sum, row) => sum + row.covered * row.benches, 0);
  const share = covered / three.reduce((sum, { benches }) => sum + benches, 0);
  expect(share).toBeGreaterThan(0.92);
  expect(share).toBeLessThan(0.98);
});
