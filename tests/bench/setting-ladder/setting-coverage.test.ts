import { expect, test } from 'vitest';
import { simulateSetting } from '../../../scripts/methods/simulate-setting.ts';
import { coverageOf } from '../../../scripts/methods/simulated-bench.ts';

test('ladders of a setting hold the truth 92 times in 100 or more, gradual or sudden', {
  tags: 'long',
}, () => {
  const { refused, rows } = coverageOf('settingLadder', simulateSetting, 1400);
  expect(refused).toBe(0);
  expect(rows).toHaveLength(4 * 8);
  const share = (kind: string) => {
    const own = rows.filter((row) => row.kind === kind);
    return own.reduce((sum, { covered, benches }) => sum + covered * benches, 0) / (50 * own.length);
  };
  for (const kind of ['gradual, graded', 'gradual, measured', 'sudden, graded', 'sudden, measured']) {
    expect(share(kind)).toBeGreaterThan(0.95);
  }
  // Each has 50 benches, so that two standard deviations of its share are 6 %.
  for (const { covered } of rows) expect(covered).toBeGreaterThan(0.88);
});
