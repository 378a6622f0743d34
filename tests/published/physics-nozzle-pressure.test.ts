import { describe, expect, it } from 'vitest';
import {
  bucklingPressure,
  channelPressureDrop,
  conePressureDrop,
  pushingForce,
  wallShearRate,
} from '../../src/physics/nozzle-pressure.ts';

// Hagen-Poiseuille law and Euler's column, recomputed in 25 digits.
describe('nozzle of 0.4 mm, 1 mm long, at 1000 Pa s and 5 mm³/s', () => {
  it('takes 7.957747 MPa and shears at 795.7747 /s', () => {
    expect(channelPressureDrop(1e-3, 1, 0.2, 5)).toBeCloseTo(7.957747, 6);
    expect(wallShearRate(5, 0.2)).toBeCloseTo(795.7747, 4);
  });

  it('takes 19.140625 N on a 1.75 mm filament', () => {
    expect(pushingForce(channelPressureDrop(1e-3, 1, 0.2, 5), 1.75)).toBeCloseTo(19.140625, 8);
  });

  it('takes 0.907908 MPa more for a cone of 30 degrees from 1.75 mm', () => {
    expect(conePressureDrop(1e-3, { wide: 0.875, narrow: 0.2 }, 30, 5)).toBeCloseTo(0.907908, 6);
  });
});

describe('filament', () => {
  it('of 1.75 mm and 3.5 GPa buckles over 20 mm at 16.52966 MPa or 39.758 N', () => {
    // Turner, Strong & Gold, Rapid Prototyping J. 20 (2014) 192-204 (criterion from memory; figure recomputed).
    const pressure = bucklingPressure(3500, 1.75, 20);
    expect(pressure).toBeCloseTo(16.52966, 5);
    expect(pushingForce(pressure, 1.75)).toBeCloseTo(39.758, 3);
  });

  it('of 1.75 mm under the 30 MPa of a barrel is pushed with 72.16 N', () => {
    // Mackay, J. Rheology 62 (2018) 1549-1561, abstract: barrel pressure of the order of 30 MPa.
    expect(pushingForce(30, 1.75)).toBeCloseTo(72.16, 2);
  });
});
