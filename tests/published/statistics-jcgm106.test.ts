import { expect, it } from 'vitest';
import { probabilityUpTo } from '../../src/statistics/conformance.ts';
import { normalQuantile } from '../../src/statistics/normal-quantile.ts';

/** A normal distribution as a covered value: its 95 % interval reaches 1.96 standard uncertainties to both sides. */
function normal(estimate: number, uncertainty: number) {
  const half = normalQuantile(0.975) * uncertainty;
  return { median: estimate, low: estimate - half, high: estimate + half };
}

it('a breakdown voltage of -5.47 V lies below -5.40 V with a probability of 92 % at u = 0.05 V', () => {
  // JCGM 106:2012, clause 7, example of an upper tolerance limit on a Zener diode (from memory): p_c = Phi(1.40) = 0.92.
  expect(probabilityUpTo(-5.4, normal(-5.47, 0.05))).toBeCloseTo(0.92, 2);
});

it('a bursting strength of 509.7 kPa lies above 490 kPa with a probability of 99 % at u = 8.6 kPa', () => {
  // JCGM 106:2012, clause 7, example of a lower tolerance limit on a metal container (from memory): p_c = Phi(2.3) = 0.99.
  expect(1 - probabilityUpTo(490, normal(509.7, 8.6))).toBeCloseTo(0.99, 2);
});

it.each([
  [0, 0.5],
  [1.645, 0.95],
  [1.96, 0.975],
  [2, 0.97725],
  [3, 0.99865],
])('a limit that is %d u away is met with a probability of %d', (distance, probability) => {
  // Phi, as in tables of the normal distribution (Abramowitz and Stegun, table 26.1), recomputed.
  expect(Math.abs(probabilityUpTo(distance, normal(0, 1)) - probability)).toBeLessThan(1e-4);
  expect(Math.abs(probabilityUpTo(-distance, normal(0, 1)) - (1 - probability))).toBeLessThan(1e-4);
});
