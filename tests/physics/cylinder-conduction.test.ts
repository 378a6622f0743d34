import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besselJ0, besselJ1 } from '../../src/physics/bessel.ts';
import {
  conductionModes,
  cylinderCentreTheta,
  cylinderMeanTheta,
  cylinderTheta,
  fourierForCentreTheta,
} from '../../src/physics/cylinder-conduction.ts';
import { runs } from '../property-runs.ts';

const fourier = fc.double({ min: 1e-3, max: 3, noNaN: true });
const biot = fc.oneof(fc.double({ min: 1e-3, max: 1e4, noNaN: true }), fc.constant(Number.POSITIVE_INFINITY));
const ratio = fc.double({ min: 0, max: 1, noNaN: true });

describe('conductionModes', () => {
  it('satisfy the surface condition, one root between zeros of J1 and J0', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (bi) => {
        for (const [index, { root }] of conductionModes(bi, 12).entries()) {
          const balance = root * besselJ1(root) - bi * besselJ0(root);
          expect(Math.abs(balance) / (root + bi)).toBeLessThan(1e-12);
          expect(root).toBeGreaterThan(index * Math.PI);
          expect(root).toBeLessThan((index + 1) * Math.PI);
        }
      }),
    );
  });

  it('come to those of a wall at one temperature as the Biot number grows', () => {
    const [large] = conductionModes(1e9, 1);
    const [infinite] = conductionModes(Number.POSITIVE_INFINITY, 1);
    expect(large?.root).toBeCloseTo(infinite?.root ?? Number.NaN, 8);
    expect(large?.coefficient).toBeCloseTo(infinite?.coefficient ?? Number.NaN, 8);
  });
});

describe('cylinderTheta', () => {
  it('stays within 0 and 1 and falls with time', () => {
    fc.assert(
      fc.property(fourier, fc.double({ min: 1e-3, max: 1, noNaN: true }), biot, ratio, (fo, more, bi, r) => {
        const [early, late] = [cylinderTheta(fo, bi, r), cylinderTheta(fo + more, bi, r)];
        expect(early).toBeLessThanOrEqual(1);
        expect(late).toBeGreaterThanOrEqual(0);
        expect(late).toBeLessThanOrEqual(early + 1e-12);
      }),
    );
  });

  it('is highest on the axis and the mean lies between axis and surface', () => {
    fc.assert(
      fc.property(fourier, biot, ratio, (fo, bi, r) => {
        const [centre, surface] = [cylinderTheta(fo, bi, 0), cylinderTheta(fo, bi, 1)];
        expect(cylinderTheta(fo, bi, r)).toBeLessThanOrEqual(centre + 1e-12);
        expect(cylinderMeanTheta(fo, bi)).toBeLessThanOrEqual(centre + 1e-12);
        expect(cylinderMeanTheta(fo, bi)).toBeGreaterThanOrEqual(surface - 1e-12);
      }),
    );
  });

  it('is the lumped exponential where the surface resists far more than the inside', () => {
    // Lumped capacitance: d theta/d Fo = -2 Bi theta (Incropera et al., section 5.1).
    expect(cylinderMeanTheta(500, 1e-3)).toBeCloseTo(Math.exp(-2 * 1e-3 * 500), 3);
  });

  it('is 1 before anything happens, and for a surface that lets nothing through', () => {
    expect(cylinderCentreTheta(0)).toBe(1);
    expect(cylinderMeanTheta(0, 2)).toBe(1);
    expect(cylinderTheta(5, 0, 0.5)).toBe(1);
  });

  it('is 0 after all time', () => {
    expect(cylinderCentreTheta(Number.POSITIVE_INFINITY)).toBe(0);
  });

  it('has the mean of a half-space near the start', () => {
    // Crank, The Mathematics of Diffusion, 2nd ed., eq. 5.25: 1 - 4 sqrt(Fo/pi) + Fo + Fo^1.5/(3 sqrt pi) + ... (from memory).
    for (const fo of [1e-4, 1e-3, 1e-2]) {
      const early = 1 - 4 * Math.sqrt(fo / Math.PI) + fo + fo ** 1.5 / (3 * Math.sqrt(Math.PI));
      expect(Math.abs(cylinderMeanTheta(fo) - early)).toBeLessThan(fo ** 2);
    }
  });

  it('keeps the mean within 0.001 at Fourier numbers too small for its modes', () => {
    for (const fo of [1e-9, 1e-7, 1e-6, 1e-5]) {
      expect(Math.abs(cylinderMeanTheta(fo) - (1 - 4 * Math.sqrt(fo / Math.PI)))).toBeLessThan(1e-3);
    }
  });
});

describe('fourierForCentreTheta', () => {
  it('undoes cylinderCentreTheta', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 0.999, noNaN: true }), biot, (theta, bi) => {
        expect(cylinderCentreTheta(fourierForCentreTheta(theta, bi), bi) / theta).toBeCloseTo(1, 9);
      }),
      { numRuns: runs(50) },
    );
  });

  it('has no time to wait for theta 1, and waits for ever for theta 0', () => {
    expect(fourierForCentreTheta(1)).toBe(0);
    expect(fourierForCentreTheta(0)).toBe(Number.POSITIVE_INFINITY);
    expect(fourierForCentreTheta(0.5, 0)).toBe(Number.POSITIVE_INFINITY);
  });
});
