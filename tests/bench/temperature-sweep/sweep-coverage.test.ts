import { expect, test } from 'vitest';
import { simulateSweep } from '../../../scripts/methods/simulate-sweep.ts';
import { coverageOf } from '../../../scripts/methods/simulated-bench.ts';

test('windows of temperature hold the true ones, whatever the top is like', { tags: 'long' }, () => {
  const { refused, rows } = coverageOf('temperatureSweep', simulateSweep, 1200, 50_000);
  expect(refused).toBe(0);
  expect(rows).toHaveLength(16);
  // Each has 100 benches or more, so that two standard deviations of a share of 95 % are 4 %.
  for (const { covered } of rows) expect(covered).toBeGreaterThan(0.88);
  const all = rows.reduce((sum, { covered, benches }) => sum + covered * benches, 0);
  expect(all / rows.reduce((sum, { benches }) => sum + benches, 0)).toBeGreaterThan(0.94);
});
