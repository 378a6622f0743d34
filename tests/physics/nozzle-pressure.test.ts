import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bucklingPressure,
  channelFlow,
  channelPressureDrop,
  conePressureDrop,
  pushingForce,
  wallShearRate,
} from '../../src/physics/nozzle-pressure.ts';

// By hand, in 25 digits: a nozzle of 0.4 mm, 1 mm long, at 1000 Pa s and 5 mm³/s.
describe('a nozzle', () => {
  it('takes 7.957747 MPa and shears at 795.7747 /s', () => {
    expect(channelPressureDrop(1e-3, 1, 0.2, 5)).toBeCloseTo(7.957747, 6);
    expect(wallShearRate(5, 0.2)).toBeCloseTo(795.7747, 4);
  });

  it('takes 19.140625 N on a 1.75 mm filament', () => {
    expect(pushingForce(channelPressureDrop(1e-3, 1, 0.2, 5), 1.75)).toBeCloseTo(19.140625, 8);
  });

  it('passes the flow whose pressure it is given', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 200, noNaN: true }), (flow) => {
        expect(channelFlow(1e-3, 1, 0.2, channelPressureDrop(1e-3, 1, 0.2, flow)) / flow).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('conePressureDrop', () => {
  it('is 0.907908 MPa for 30 degrees from 1.75 mm to 0.4 mm', () => {
    expect(conePressureDrop(1e-3, { wide: 0.875, narrow: 0.2 }, 30, 5)).toBeCloseTo(0.907908, 6);
  });

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
  it('of 1.75 mm and 3.5 GPa over 20 mm is 16.52966 MPa or 39.758 N', () => {
    const pressure = bucklingPressure(3500, 1.75, 20);
    expect(pressure).toBeCloseTo(16.52966, 5);
    expect(pushingForce(pressure, 1.75)).toBeCloseTo(39.758, 3);
  });

  it('is a quarter at twice the free length', () => {
    expect(bucklingPressure(3500, 1.75, 40)).toBeCloseTo(bucklingPressure(3500, 1.75, 20) / 4, 10);
  });
});
