import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  densityOfFilledGrade,
  densityOfMixture,
  fillerMassFractionAtDensity,
} from '../../src/physics/mixture.ts';

const density = fc.double({ min: 5e-4, max: 2e-2, noNaN: true });
const fraction = fc.double({ min: 0, max: 1, noNaN: true });

describe('densityOfMixture', () => {
  it('lies between its parts', () => {
    fc.assert(
      fc.property(density, density, fraction, (matrix, filler, w) => {
        const mixed = densityOfFilledGrade(matrix, filler, w);
        expect(mixed).toBeGreaterThanOrEqual(Math.min(matrix, filler) * (1 - 1e-12));
        expect(mixed).toBeLessThanOrEqual(Math.max(matrix, filler) * (1 + 1e-12));
      }),
    );
  });

  it('adds up volumes, not densities', () => {
    const half = { massFraction: 0.5 };
    expect(
      densityOfMixture([
        { ...half, density: 1e-3 },
        { ...half, density: 3e-3 },
      ]),
    ).toBeCloseTo(1.5e-3, 12);
  });
});

describe('fillerMassFractionAtDensity', () => {
  it('undoes densityOfFilledGrade', () => {
    fc.assert(
      fc.property(fraction, (w) => {
        const mixed = densityOfFilledGrade(1.14e-3, 2.55e-3, w);
        expect(fillerMassFractionAtDensity(mixed, 1.14e-3, 2.55e-3)).toBeCloseTo(w, 10);
      }),
    );
  });

  it('is above 1 for a density above that of the filler', () => {
    expect(fillerMassFractionAtDensity(3e-3, 1.14e-3, 2.55e-3)).toBeGreaterThan(1);
  });

  it('cannot tell where filler and matrix are equally dense', () => {
    expect(fillerMassFractionAtDensity(1e-3, 1e-3, 1e-3)).toBeUndefined();
  });
});
