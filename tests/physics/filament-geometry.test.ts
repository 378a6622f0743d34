import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  filamentFeed,
  filamentLength,
  filamentMass,
  flowOfFeed,
  spoolDuration,
} from '../../src/physics/filament-geometry.ts';

const diameter = fc.double({ min: 1, max: 4, noNaN: true });
const density = fc.double({ min: 5e-4, max: 5e-3, noNaN: true });
const amount = fc.double({ min: 0.1, max: 5000, noNaN: true });

describe('filamentFeed', () => {
  it('undoes flowOfFeed', () => {
    fc.assert(
      fc.property(amount, diameter, (flow, d) => {
        expect(flowOfFeed(filamentFeed(flow, d), d) / flow).toBeCloseTo(1, 12);
      }),
    );
  });

  it('is slower in a thicker filament', () => {
    expect(filamentFeed(20, 2.85)).toBeLessThan(filamentFeed(20, 1.75));
  });
});

describe('filamentLength', () => {
  it('undoes filamentMass', () => {
    fc.assert(
      fc.property(amount, density, diameter, (mass, rho, d) => {
        expect(filamentMass(filamentLength(mass, rho, d), rho, d) / mass).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('spoolDuration', () => {
  it('is the length of the filament over its feed', () => {
    fc.assert(
      fc.property(amount, density, diameter, amount, (mass, rho, d, flow) => {
        const seconds = filamentLength(mass, rho, d) / filamentFeed(flow, d);
        expect(spoolDuration(mass, rho, flow) / seconds).toBeCloseTo(1, 12);
      }),
    );
  });
});
