import { expect, test } from 'vitest';
import { lineCoverage } from '../../../scripts/methods/simulate-line.ts';
import { fitLimitLine } from '../../../src/bench/limit-line/limit-line.ts';
import { limitAt } from '../../../src/bench/limit-line/limit-line-answers.ts';
import { randomSource } from '../../../src/statistics/random.ts';

const truth = (temperature: number) => 30 + 0.4 * (temperature - 210);

/** Share of simulated lines whose band holds the truth at a temperature between the ladders. */
function coverage(ladders: number, betweenRuns: number): number {
  const random = randomSource(`limit line ${ladders} ${betweenRuns}`);
  const lines = 2000;
  let held = 0;
  for (let line = 0; line < lines; line++) {
    const points = Array.from({ length: ladders }, (_, index) => {
      const temperature = 210 + (30 * index) / (ladders - 1);
      const uncertainty = 0.3 + 0.3 * random.uniform();
      const limit =
        truth(temperature) + uncertainty * random.normal() + betweenRuns * uncertainty * random.normal();
      return { temperature, limit, low: limit - 1.96 * uncertainty, high: limit + 1.96 * uncertainty };
    });
    const fit = fitLimitLine(points);
    const temperature = 210 + 30 * random.uniform();
    const answer = fit.ok ? limitAt(fit.value, temperature) : fit;
    if (!answer.ok) throw new Error('there is a line, and the temperature is tested');
    if (answer.value.low <= truth(temperature) && truth(temperature) <= answer.value.high) held++;
  }
  return held / lines;
}

test.each([2, 3, 4, 6])('the band of %i ladders whose intervals are true holds the truth', (ladders) => {
  expect(coverage(ladders, 0)).toBeGreaterThan(0.94);
  expect(coverage(ladders, 0)).toBeLessThan(0.98);
});

// Three ladders cannot tell how much benches differ from run to run: a prior stands in, and it is not always right.
test.each([
  [3, 0.86],
  [4, 0.9],
  [6, 0.91],
])('with runs that differ by twice their intervals, %i ladders hold it in at least %f', (ladders, least) => {
  expect(coverage(ladders, 2)).toBeGreaterThan(least);
});

test.each([4, 5, 6])(
  '%i ladders hold it at 1.5 to 3 times the scatter that their intervals say',
  {
    tags: 'long',
  },
  (ladders) => {
    for (const scatter of [1.5, 2, 2.5, 3]) {
      const kind = { ladders, scatter, extra: 'every interval is too short' } as const;
      const { covered } = lineCoverage(kind, 20_000, 'kept for the test');
      // Two standard deviations of a share of 20 000 are 0.4 %.
      expect(covered).toBeGreaterThan(0.92 - 0.004);
      expect(covered).toBeLessThan(0.97);
    }
  },
);

test('ladders that agree pay for it with little', { tags: 'long' }, () => {
  for (const [ladders, most] of [
    [3, 1.7],
    [4, 1.65],
    [6, 1.4],
    [8, 1.3],
  ] as const) {
    const { wider } = lineCoverage(
      { ladders, scatter: 1, extra: 'runs differ' },
      20_000,
      'kept for the test',
    );
    expect(wider).toBeLessThan(most);
  }
});
