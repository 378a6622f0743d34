import { expect, test } from 'vitest';
import { simulateDrying } from '../../../scripts/methods/simulate-drying.ts';
import { coverageOf } from '../../../scripts/methods/simulated-bench.ts';

test('dryings by one stage hold the truth, and those by others are told where they do not', {
  tags: 'long',
}, () => {
  const { refused, rows } = coverageOf('dryingCurve', simulateDrying, 720, 50_000);
  expect(refused).toBe(0);
  expect(rows).toHaveLength(6);
  const of = (kind: string) => rows.find((row) => row.kind === kind);
  // Each has 120 benches, so that two standard deviations of a share of 95 % are 4 %.
  for (const kind of ['one stage', 'out of a strand']) expect(of(kind)?.covered).toBeGreaterThan(0.91);
  for (const kind of ['two stages', 'surface and strand', 'warm-up', 'late start']) {
    expect(of(kind)?.untold).toBeLessThan(0.05);
    expect(of(kind)?.warned).toBeGreaterThan(0.88);
  }
  expect(of('one stage')?.warned).toBeLessThan(0.15);
});
