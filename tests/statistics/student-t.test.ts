import fc from 'fast-check';
import { expect, test } from 'vitest';
import { studentTDistribution, studentTQuantile } from '../../src/statistics/student-t.ts';

test('one degree of freedom is the Cauchy distribution', () => {
  for (const t of [-20, -1, -0.1, 0, 0.3, 1, 7]) {
    expect(studentTDistribution(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
  }
});

test('two degrees of freedom have a closed form', () => {
  for (const t of [-5, -1, 0.2, 3]) {
    expect(studentTDistribution(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 13);
  }
});

test('the quantile undoes the distribution, for whole and broken degrees of freedom', () => {
  const probability = fc.double({ min: 0.001, max: 0.999, noNaN: true });
  const degrees = fc.double({ min: 0.5, max: 500, noNaN: true });
  fc.assert(
    fc.property(probability, degrees, (p, nu) => {
      expect(studentTDistribution(studentTQuantile(p, nu), nu)).toBeCloseTo(p, 11);
    }),
  );
});

test('refuses what is no probability', () => {
  expect(() => studentTQuantile(1, 5)).toThrow(RangeError);
  expect(() => studentTQuantile(0.9, 0)).toThrow(RangeError);
});
