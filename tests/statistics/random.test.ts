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

/** Results that draws go into are written down, so a seed's numbers stay what they are. */
test('a seed gives these numbers, on every machine and from one version to the next', () => {
  const random = randomSource('ladder 7');
  const next = (count: number, draw: () => number) =>
    Array.from({ length: count }, () => Number(draw().toFixed(9)));
  expect(next(4, random.uniform)).toEqual([0.220590289, 0.104110866, 0.775525954, 0.082026825]);
  expect(next(4, random.normal)).toEqual([-1.021073416, -1.007181556, -1.066832812, 1.008113869]);
  expect(next(6, () => random.gamma(0.5))).toEqual([
    0.127970639, 0.067882887, 0.54365976, 0.010211679, 0.196845741, 1.213723847,
  ]);
  expect(next(12, () => random.gamma(4.5))).toEqual([
    2.123682926, 3.280330718, 7.069966608, 3.74499948, 3.373240717, 2.966576318, 6.84554193, 6.580929063,
    5.15676886, 6.086207518, 9.139691267, 4.131360758,
  ]);
  expect(next(3, () => random.studentT(4))).toEqual([-0.149618142, -0.213265131, -0.168172422]);
});
