import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sampleCurve } from '../../src/plots/sample-curve.ts';

describe('points of a curve', () => {
  it('are the two ends of a level one', () => {
    expect(sampleCurve(() => 5, [1, 3], 0.01)).toEqual([
      { x: 1, y: 5 },
      { x: 3, y: 5 },
    ]);
  });

  it('keep straight lines between them within the tolerance of a hyperbola', () => {
    const size = fc.double({ min: 0.05, max: 2, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: 0, max: 1, noNaN: true }), (low, span, share) => {
        const points = sampleCurve((x) => 1 / x, [low, low + span], 1e-3);
        const x = low + share * span;
        const after = Math.max(
          1,
          points.findIndex((point) => point.x >= x),
        );
        const [from, to] = [points[after - 1]!, points[after]!];
        const drawn = from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y);
        expect(Math.abs(drawn - 1 / x)).toBeLessThanOrEqual(1.05e-3);
      }),
    );
  });

  it('are few where the curve is no number', () => {
    expect(sampleCurve(() => Number.NaN, [0, 1], 0.01).length).toBeLessThanOrEqual(17);
  });

  it('end even for a curve that jumps', () => {
    const points = sampleCurve((x) => (x < Math.SQRT1_2 ? 0 : 1), [0, 1], 1e-9);
    expect(points.length).toBeLessThan(100);
  });
});
