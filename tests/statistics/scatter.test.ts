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

test("values that scatter widen it by the Birge ratio, with Student's factor for the effective freedom", () => {
  // Variance 1 known and 3 estimated with four degrees of freedom: 4² / (3²/4) by JCGM 100:2008, formula G.2b.
  const scatter = scatterOf({ residualSquares: 16, degreesOfFreedom: 4 });
  expect(scatter).toMatchObject({ birgeRatio: 2, widening: 2 });
  expect(scatter.effectiveDegreesOfFreedom).toBeCloseTo(64 / 9, 12);
  // Between 2.36 for seven and 2.31 for eight degrees of freedom (JCGM 100:2008, table G.2).
  expect(scatter.coverageFactor).toBeCloseTo(2.36, 2);
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
