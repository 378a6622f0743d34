import { expect, test } from 'vitest';
import { simulateContour } from '../../../scripts/methods/simulate-contour.ts';
import { coverageOf } from '../../../scripts/methods/simulated-bench.ts';

test('contour ladders hold the truth, with a resonance or without', { tags: 'long' }, () => {
  const { refused, rows } = coverageOf('contourLadder', simulateContour, 1200, 50_000);
  expect(refused).toBe(0);
  expect(rows).toHaveLength(8);
  // Each has 100 benches or more, so that two standard deviations of a share of 95 % are 4 %.
  for (const { covered } of rows) expect(covered).toBeGreaterThan(0.91);
  const hump = rows.find(({ kind }) => kind === 'hump past the limit');
  expect(hump?.warned).toBeGreaterThan(0.95);
});
