import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flowOfFeed, spoolDuration, strandFeed, strandLength, strandMass } from '../../src/physics/strand.ts';

const diameter = fc.double({ min: 1, max: 4, noNaN: true });
const density = fc.double({ min: 5e-4, max: 5e-3, noNaN: true });
const amount = fc.double({ min: 0.1, max: 5000, noNaN: true });

describe('strandFeed', () => {
  it('undoes flowOfFeed', () => {
    fc.assert(
      fc.property(amount, diameter, (flow, d) => {
        expect(flowOfFeed(strandFeed(flow, d), d) / flow).toBeCloseTo(1, 12);
      }),
    );
  });

  it('is slower in a thicker strand', () => {
    expect(strandFeed(20, 2.85)).toBeLessThan(strandFeed(20, 1.75));
  });
});

describe('strandLength', () => {
  it('undoes strandMass', () => {
    fc.assert(
      fc.property(amount, density, diameter, (mass, rho, d) => {
        expect(strandMass(strandLength(mass, rho, d), rho, d) / mass).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('spoolDuration', () => {
  it('is the length of the strand over its feed', () => {
    fc.assert(
      fc.property(amount, density, diameter, amount, (mass, rho, d, flow) => {
        const seconds = strandLength(mass, rho, d) / strandFeed(flow, d);
        expect(spoolDuration(mass, rho, flow) / seconds).toBeCloseTo(1, 12);
      }),
    );
  });
});
