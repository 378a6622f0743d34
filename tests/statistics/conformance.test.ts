import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { probabilityUpTo } from '../../src/statistics/conformance.ts';

describe('the probability of lying at or below a limit', () => {
  const value = { median: 10, low: 9, high: 13 };

  it('is what the interval says at its ends and at the median', () => {
    expect(probabilityUpTo(9, value)).toBeCloseTo(0.025, 6);
    expect(probabilityUpTo(10, value)).toBeCloseTo(0.5, 9);
    expect(probabilityUpTo(13, value)).toBeCloseTo(0.975, 6);
  });

  it('is 0 or 1 where nothing is in doubt', () => {
    const certain = { median: 10, low: 10, high: 10 };
    expect([9.9, 10, 10.1].map((limit) => probabilityUpTo(limit, certain))).toEqual([0, 1, 1]);
  });

  it('rises with the limit and stays a probability', () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(number, number, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((limit) => probabilityUpTo(limit, value));
        expect(low).toBeLessThanOrEqual((high ?? 0) + 1e-15);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('agrees with draws of two half normals', () => {
    // An independent count: quantiles of a fine grid of probabilities, each half scaled by its own width.
    const limit = 11.2;
    const grid = 20_000;
    let below = 0;
    for (let index = 0; index < grid; index++) {
      const u = (index + 0.5) / grid;
      const z = standardQuantile(u);
      if (10 + (z < 0 ? z / 1.959964 : (3 * z) / 1.959964) <= limit) below++;
    }
    expect(probabilityUpTo(limit, value)).toBeCloseTo(below / grid, 3);
  });
});

/** By bisection on the integral of the density (Simpson's rule), apart from the code under test. */
function standardQuantile(u: number): number {
  let [low, high] = [-6, 6];
  for (let step = 0; step < 30; step++) {
    const middle = (low + high) / 2;
    if (phi(middle) < u) low = middle;
    else high = middle;
  }
  return low;
}

function phi(z: number): number {
  const steps = 40;
  const h = z / steps;
  let sum = 0;
  for (let k = 0; k <= steps; k++) {
    const weight = k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2;
    sum += weight * Math.exp(-((k * h) ** 2) / 2);
  }
  return 0.5 + ((h / 3) * sum) / Math.sqrt(2 * Math.PI);
}
