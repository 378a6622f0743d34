import { expect, test } from 'vitest';
import { type CandidateModel, samplePosterior } from '../../../scripts/reference/sequential-sampler.ts';
import { describe } from '../../../src/statistics/describe.ts';
import { randomSource } from '../../../src/statistics/random.ts';

const effort = { startingDraws: 8000, particles: 2000, movesPerStage: 5, finalRounds: 4 };

/** A normal prior of mean 0 and standard deviation 10 on one coordinate, and one reading of it. */
function oneReading(reading: number, uncertainty: number): CandidateModel {
  return {
    drawPrior: (random) => [10 * random.normal()],
    logPrior: ([x = Number.NaN]) => -0.5 * (x / 10) ** 2,
    logLikelihood: ([x = Number.NaN]) => -0.5 * ((reading - x) / uncertainty) ** 2 - Math.log(uncertainty),
  };
}

test('reproduces the posterior of a normal mean', () => {
  const draws = samplePosterior([oneReading(7, 0.5)], effort, randomSource('normal'));
  const { mean, standardDeviation } = describe(draws.map(({ point: [x = Number.NaN] }) => x));
  const precision = 1 / 0.5 ** 2 + 1 / 10 ** 2;
  expect(mean).toBeCloseTo(7 / 0.5 ** 2 / precision, 1);
  expect(standardDeviation).toBeCloseTo(1 / Math.sqrt(precision), 1);
});

test('follows a posterior of two separate peaks', () => {
  const twoPeaks: CandidateModel = {
    ...oneReading(0, 1),
    logLikelihood: ([x = Number.NaN]) => Math.log(Math.exp(-2 * (x - 8) ** 2) + Math.exp(-2 * (x + 8) ** 2)),
  };
  const draws = samplePosterior([twoPeaks], effort, randomSource('peaks'));
  const right = draws.filter(({ point: [x = Number.NaN] }) => x > 0).length / draws.length;
  expect(right).toBeGreaterThan(0.4);
  expect(right).toBeLessThan(0.6);
});

test('weighs models by how well they foretold the readings', () => {
  // Evidence: normal densities at 0 of variance 10² + 1² and 10² + 20².
  const draws = samplePosterior([oneReading(0, 1), oneReading(0, 20)], effort, randomSource('models'));
  const first = draws.filter(({ model }) => model === 0).length / draws.length;
  const expected = Math.sqrt(500) / (Math.sqrt(101) + Math.sqrt(500));
  expect(Math.abs(first - expected)).toBeLessThan(0.05);
});

test('the same seed gives the same draws', () => {
  const run = () =>
    samplePosterior([oneReading(1, 1)], { ...effort, particles: 50, startingDraws: 100 }, randomSource('x'));
  expect(run()).toEqual(run());
});
