import { expect, test } from 'vitest';
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

// Few ladders cannot tell how much benches differ from run to run: the band is honest, not complete.
test.each([
  [3, 0.8],
  [4, 0.85],
  [6, 0.88],
])('with runs that differ by twice their intervals, %i ladders hold it in at least %f', (ladders, least) => {
  expect(coverage(ladders, 2)).toBeGreaterThan(least);
});
