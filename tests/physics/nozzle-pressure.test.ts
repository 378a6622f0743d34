import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bucklingPressure,
  channelPressureDrop,
  conePressureDrop,
} from '../../src/physics/nozzle-pressure.ts';

describe('conePressureDrop', () => {
  it('is that of a channel where the cone hardly narrows', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 60, noNaN: true }), (halfAngle) => {
        const radii = { wide: 0.5001, narrow: 0.5 };
        const length = (radii.wide - radii.narrow) / Math.tan((halfAngle * Math.PI) / 180);
        const cone = conePressureDrop(1e-3, radii, halfAngle, 5);
        expect(cone / channelPressureDrop(1e-3, length, 0.50005, 5)).toBeCloseTo(1, 6);
      }),
    );
  });
});

describe('bucklingPressure', () => {
  it('is a quarter at twice the free length', () => {
    expect(bucklingPressure(3500, 1.75, 40)).toBeCloseTo(bucklingPressure(3500, 1.75, 20) / 4, 10);
  });
});
