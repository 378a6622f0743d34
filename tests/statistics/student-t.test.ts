import fc from 'fast-check';
import { expect, test } from 'vitest';
import { studentTDistribution, studentTQuantile } from '../../src/statistics/student-t.ts';

test('one degree of freedom is the Cauchy distribution', () => {
  for (const t of [-20, -1, -0.1, 0, 0.3, 1, 7]) {
    expect(studentTDistribution(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 13);
  }
});

test('beside 0 no digit is lost', () => {
  for (const t of [1e-4, 1e-6, 1e-7]) {
    expect(studentTDistribution(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 14);
    expect(studentTDistribution(-t, 2)).toBeCloseTo(0.5 - t / (2 * Math.sqrt(2 + t * t)), 14);
  }
});

// The normal distribution leaves less than 1e-80 beyond 20.
test.each([1e4, 1e6, 1e8])('far out nothing is left: %f degrees of freedom', (degrees) => {
  expect(studentTDistribution(-20, degrees)).toBeCloseTo(0, 15);
  expect(studentTDistribution(20, degrees)).toBeCloseTo(1, 15);
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

test('the quantile is odd about one half', () => {
  expect(studentTQuantile(0.5, 4)).toBeCloseTo(0, 12);
  for (const probability of [0.001, 0.2, 0.49])
    expect(studentTQuantile(probability, 4)).toBeCloseTo(-studentTQuantile(1 - probability, 4), 10);
});

// Abramowitz and Stegun, table 26.5, from memory.
test('endlessly many degrees of freedom are the normal distribution', () => {
  expect(studentTQuantile(0.975, Number.POSITIVE_INFINITY)).toBeCloseTo(1.959964, 6);
  expect(studentTDistribution(-1.959964, 1e12)).toBeCloseTo(0.025, 7);
});

test('refuses either end of a probability, and degrees of freedom below zero', () => {
  for (const [probability, freedom] of [
    [0, 5],
    [-0.1, 5],
    [1.1, 5],
    [Number.NaN, 5],
    [0.9, -1],
  ] as const)
    expect(() => studentTQuantile(probability, freedom), `${probability}, ${freedom}`).toThrow(
      'outside of the distribution',
    );
});
