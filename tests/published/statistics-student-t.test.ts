// JCGM 100:2008 (GUM), annex G, table G.2: t_p(ν) for a fraction p of the distribution between -t and t.
import { expect, test } from 'vitest';
import { studentTQuantile } from '../../src/statistics/student-t.ts';

const fractions = [0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973];

test.each([
  // The table prints 235.80 for ν = 1 and 99.73 %; with p = 0.9973 exactly it is 235.78.
  [1, 1.84, 6.31, 12.71, 13.97, 63.66, 235.78],
  [2, 1.32, 2.92, 4.3, 4.53, 9.92, 19.21],
  [3, 1.2, 2.35, 3.18, 3.31, 5.84, 9.22],
  [4, 1.14, 2.13, 2.78, 2.87, 4.6, 6.62],
  [5, 1.11, 2.02, 2.57, 2.65, 4.03, 5.51],
  [6, 1.09, 1.94, 2.45, 2.52, 3.71, 4.9],
  [8, 1.07, 1.86, 2.31, 2.37, 3.36, 4.28],
  [9, 1.06, 1.83, 2.26, 2.32, 3.25, 4.09],
  [10, 1.05, 1.81, 2.23, 2.28, 3.17, 3.96],
  [16, 1.03, 1.75, 2.12, 2.17, 2.92, 3.54],
  [20, 1.03, 1.72, 2.09, 2.13, 2.85, 3.42],
  [50, 1.01, 1.68, 2.01, 2.05, 2.68, 3.16],
  [100, 1.01, 1.66, 1.98, 2.03, 2.63, 3.08],
  [Number.POSITIVE_INFINITY, 1.0, 1.64, 1.96, 2.0, 2.58, 3.0],
])('%f degrees of freedom', (degrees, ...printed) => {
  const computed = fractions.map((fraction) => studentTQuantile((1 + fraction) / 2, degrees));
  for (const [index, value] of printed.entries()) {
    expect(Math.abs(computed[index]! - value)).toBeLessThan(0.0051);
  }
});

test('H.1.6: 16 degrees of freedom and 99 % make a coverage factor of 2.92', () => {
  expect(studentTQuantile(0.995, 16)).toBeCloseTo(2.92, 2);
});
