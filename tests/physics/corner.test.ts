import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerRadius, cornerSpeed } from '../../src/physics/corner.ts';

const deflection = fc.double({ min: 1, max: 179, noNaN: true });
const tolerance = fc.double({ min: 0.001, max: 1, noNaN: true });

describe('cornerRadius', () => {
  it('gives an arc that passes the corner at the tolerance', () => {
    fc.assert(
      fc.property(deflection, tolerance, (angle, allowed) => {
        const radius = cornerRadius({ deflection: angle, tolerance: allowed });
        const centreToCorner = radius / Math.cos((angle * Math.PI) / 360);
        expect((centreToCorner - radius) / allowed).toBeCloseTo(1, 6);
      }),
    );
  });

  it('is unlimited where the path goes straight on', () => {
    expect(cornerRadius({ deflection: 0, tolerance: 0.05 })).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('cornerSpeed', () => {
  it('is a stop where the path comes straight back', () => {
    expect(cornerSpeed({ deflection: 180, tolerance: 0.05 }, 10_000)).toBeCloseTo(0, 6);
  });

  it('falls as the corner gets sharper', () => {
    fc.assert(
      fc.property(deflection, deflection, tolerance, (one, other, allowed) => {
        const speed = (angle: number) => cornerSpeed({ deflection: angle, tolerance: allowed }, 5000);
        expect(speed(Math.max(one, other))).toBeLessThanOrEqual(speed(Math.min(one, other)));
      }),
    );
  });
});
