import fc from 'fast-check';
import { expect, test } from 'vitest';
import { scatterOf } from '../../src/statistics/scatter.ts';

test('values that agree leave the result as it is', () => {
  expect(scatterOf({ residualSquares: 1, degreesOfFreedom: 4 })).toEqual({
    birgeRatio: 0.5,
    widening: 1,
    effectiveDegreesOfFreedom: null,
    coverageFactor: expect.closeTo(1.96, 4),
  });
});

test("values that scatter widen it by the Birge ratio, and the surplus counts with Student's factor for its own freedom", () => {
  const scatter = scatterOf({ residualSquares: 16, degreesOfFreedom: 4 });
  expect(scatter).toMatchObject({ birgeRatio: 2, widening: 2, effectiveDegreesOfFreedom: 4 });
  // The variance is 4 times the explained; what exceeds 0.72 of it is the surplus. JCGM 100:2008, table G.2: 2.78 for four.
  expect(scatter.coverageFactor * 2).toBeCloseTo(Math.hypot(1.96, 2.776 * Math.sqrt(4 - 0.72)), 2);
});

test('a surplus is no better known for being small: its freedom is that of the fit', () => {
  const freedomAt = (birgeRatio: number) =>
    scatterOf({ residualSquares: 5 * birgeRatio ** 2, degreesOfFreedom: 5 }).effectiveDegreesOfFreedom;
  expect([0.9, 1.1, 3].map(freedomAt)).toEqual([5, 5, 5]);
});

test('with one degree of freedom a prior stands for a second, so that one value far off is not told from chance by 12.7', () => {
  const { effectiveDegreesOfFreedom, coverageFactor, widening } = scatterOf({
    residualSquares: 1e4,
    degreesOfFreedom: 1,
  });
  expect(effectiveDegreesOfFreedom).toBe(2);
  // Half of the squares, by Student's 4.30 for two (JCGM 100:2008, table G.2).
  expect((coverageFactor * widening) / 100).toBeCloseTo(4.303 / Math.SQRT2, 2);
});

test('more scatter never makes an interval narrower, and a little more only a little wider', () => {
  const squares = fc.double({ min: 0, max: 1e4, noNaN: true });
  fc.assert(
    fc.property(squares, fc.integer({ min: 1, max: 20 }), (residualSquares, degreesOfFreedom) => {
      const width = (more: number) => {
        const { widening, coverageFactor } = scatterOf({
          residualSquares: residualSquares + more,
          degreesOfFreedom,
        });
        return widening * coverageFactor;
      };
      expect(width(0.01)).toBeGreaterThanOrEqual(width(0) * (1 - 1e-9));
      expect(width(1e-6)).toBeLessThan(width(0) * 1.01);
    }),
  );
});

test('without a degree of freedom there is no scatter to see', () => {
  expect(scatterOf({ residualSquares: 0, degreesOfFreedom: 0 })).toMatchObject({
    birgeRatio: null,
    widening: 1,
  });
});

test('scatter counts as a surplus from 0.72 of the explained variance on', () => {
  const of = (residualSquares: number) => scatterOf({ residualSquares, degreesOfFreedom: 4 });
  expect(of(4 * 0.72)).toMatchObject({ effectiveDegreesOfFreedom: null, widening: 1 });
  expect(of(4 * 0.73)).toMatchObject({ effectiveDegreesOfFreedom: 4, widening: 1 });
  // Below the explained nothing is widened, and the factor alone tells the surplus.
  expect(of(4 * 0.97).coverageFactor).toBeCloseTo(Math.hypot(1.96, 2.776 * Math.sqrt(0.97 - 0.72)), 2);
});

test('the prior of 1.1 stands for the second degree of freedom alone', () => {
  const { coverageFactor, birgeRatio } = scatterOf({ residualSquares: 1, degreesOfFreedom: 1 });
  expect(birgeRatio).toBe(1);
  // Half of 1 and half of 1.21, less 0.72, by Student's 4.303 for two (JCGM 100:2008, table G.2).
  expect(coverageFactor).toBeCloseTo(Math.hypot(1.96, 4.303 * Math.sqrt(1.105 - 0.72)), 2);
  expect(scatterOf({ residualSquares: 2, degreesOfFreedom: 2 }).coverageFactor).toBeCloseTo(
    Math.hypot(1.96, 4.303 * Math.sqrt(1 - 0.72)),
    2,
  );
});
