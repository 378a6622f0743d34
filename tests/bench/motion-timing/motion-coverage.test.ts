import { expect, test } from 'vitest';
import { simulateMotion } from '../../../scripts/methods/simulate-motion.ts';
import { coverageOf } from '../../../scripts/methods/simulated-bench.ts';

test('timed moves hold the truth 92 to 98 times in 100, whatever the form of the ramps', {
  tags: 'long',
}, () => {
  const { refused, rows } = coverageOf('motionTiming', simulateMotion, 800);
  expect(refused).toBeLessThan(16);
  for (const quantity of ['reachedSpeed', 'reachedAcceleration', 'turnPause']) {
    const own = rows.filter((row) => row.quantity === quantity);
    const covered = own.reduce((sum, row) => sum + row.covered * row.benches, 0);
    const share = covered / own.reduce((sum, row) => sum + row.benches, 0);
    expect(share).toBeGreaterThan(0.92);
    expect(share).toBeLessThan(0.98);
    // A kind has 200 benches, so that two standard deviations of its share are 3 %.
    for (const row of own) expect(row.covered).toBeGreaterThan(0.9);
  }
});

test('rounded ramps are told from steady ones', { tags: 'long' }, () => {
  const { rows } = coverageOf('motionTiming', (index) => simulateMotion(4 * index + 3), 60);
  expect(rows.map(({ warned }) => warned)).toEqual([1, 1, 1]);
});
