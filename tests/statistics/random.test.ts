import { expect, test } from 'vitest';
import { describe } from '../../src/statistics/describe.ts';
import { type RandomSource, randomSource } from '../../src/statistics/random.ts';

function sample(draw: (random: RandomSource) => number) {
  const random = randomSource('a sample');
  return describe(Array.from({ length: 200_000 }, () => draw(random)));
}

test('the same seed gives the same numbers', () => {
  const take = (seed: string) => {
    const random = randomSource(seed);
    return [random.uniform(), random.normal(), random.gamma(0.7), random.studentT(4)];
  };
  expect(take('ladder 7')).toEqual(take('ladder 7'));
  expect(take('ladder 7')).not.toEqual(take('ladder 8'));
});

test('uniform numbers lie in [0, 1) with mean 1/2 and variance 1/12', () => {
  const { mean, standardDeviation } = sample((random) => random.uniform());
  expect(mean).toBeCloseTo(0.5, 2);
  expect(standardDeviation).toBeCloseTo(Math.sqrt(1 / 12), 2);
});

test('normal numbers have mean 0 and standard deviation 1', () => {
  const { mean, standardDeviation, autocorrelation } = sample((random) => random.normal());
  expect(mean).toBeCloseTo(0, 1);
  expect(standardDeviation).toBeCloseTo(1, 2);
  expect(autocorrelation).toBeCloseTo(0, 1);
});

test.each([0.5, 1, 4.5])('gamma numbers of shape %f have that mean and variance', (shape) => {
  const { mean, standardDeviation } = sample((random) => random.gamma(shape));
  expect(mean / shape).toBeCloseTo(1, 1);
  expect(standardDeviation / Math.sqrt(shape)).toBeCloseTo(1, 1);
});

test('Student t numbers with 10 degrees of freedom have variance 10/8', () => {
  expect(sample((random) => random.studentT(10)).standardDeviation).toBeCloseTo(Math.sqrt(10 / 8), 1);
});
