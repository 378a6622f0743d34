import { expect, test } from 'vitest';
import { type Distribution, draw } from '../../src/statistics/distributions.ts';
import { randomSource } from '../../src/statistics/random.ts';

/** A draw for which chance gave what is listed. */
function drawn(distribution: Distribution, ...uniform: number[]): number {
  const given = { normal: () => 2, studentT: () => -3, uniform: () => uniform.shift() ?? Number.NaN };
  return draw(distribution, Object.assign(randomSource('none'), given));
}

const range = { low: 10, high: 20 };

// The formulas of JCGM 101:2008, 6.4, worked by hand.
test.each<[string, number, Distribution, number[]]>([
  ['mean and twice the uncertainty', 8, { kind: 'normal', mean: 5, standardUncertainty: 1.5 }, []],
  ['mean less three scales', -1, { kind: 'studentT', mean: 5, scale: 2, degreesOfFreedom: 4 }, []],
  ['a fourth of the range', 12.5, { kind: 'rectangular', ...range }, [0.25]],
  ['half of the sum of two draws', 15, { kind: 'triangular', ...range }, [0.25, 0.75]],
  ['the middle of a sine', 15, { kind: 'arcsine', ...range }, [0]],
  ['the top of a sine', 20, { kind: 'arcsine', ...range }, [0.25]],
  ['the bottom of a sine', 10, { kind: 'arcsine', ...range }, [0.75]],
  [
    'the low end, shifted inwards',
    12,
    { kind: 'curvilinearTrapezoid', ...range, limitUncertainty: 2 },
    [1, 0],
  ],
  [
    'the low end, shifted outwards',
    8,
    { kind: 'curvilinearTrapezoid', ...range, limitUncertainty: 2 },
    [0, 0],
  ],
  [
    'the high end, shifted inwards',
    18,
    { kind: 'curvilinearTrapezoid', ...range, limitUncertainty: 2 },
    [1, 1],
  ],
])('draws %s: %f', (_, value, distribution, uniform) => {
  expect(drawn(distribution, ...uniform)).toBeCloseTo(value, 12);
});
