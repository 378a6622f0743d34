import type { Fraction, GramsPerCubicMillimetre } from '../units/canonical.ts';

/** One component of a mixture; the mass fractions of all components add up to 1. */
export interface MixturePart {
  readonly massFraction: Fraction;
  readonly density: GramsPerCubicMillimetre;
}

/**
 * Density, in g/mm³, of a mixture without voids: 1/rho = sum of w_i/rho_i.
 * Source: additivity of volumes; for filled plastics Osswald & Menges, Materials Science of Polymers for Engineers (from memory).
 */
export function densityOfMixture(parts: readonly MixturePart[]): GramsPerCubicMillimetre {
  return 1 / parts.reduce((volume, part) => volume + part.massFraction / part.density, 0);
}

/** Density, in g/mm³, of a matrix with one filler of the given mass fraction. Source: as `densityOfMixture`. */
export function densityOfFilledGrade(
  matrixDensity: GramsPerCubicMillimetre,
  fillerDensity: GramsPerCubicMillimetre,
  fillerMassFraction: Fraction,
): GramsPerCubicMillimetre {
  return densityOfMixture([
    { massFraction: 1 - fillerMassFraction, density: matrixDensity },
    { massFraction: fillerMassFraction, density: fillerDensity },
  ]);
}

/**
 * Mass fraction of one filler that a density tells. Outside 0 to 1 the density is not one of such a mixture;
 * `undefined` if filler and matrix are equally dense, for then every fraction fits.
 * Source: as `densityOfMixture`, solved for w.
 */
export function fillerMassFractionAtDensity(
  density: GramsPerCubicMillimetre,
  matrixDensity: GramsPerCubicMillimetre,
  fillerDensity: GramsPerCubicMillimetre,
): Fraction | undefined {
  if (matrixDensity === fillerDensity) {
    return undefined;
  }
  return (1 / density - 1 / matrixDensity) / (1 / fillerDensity - 1 / matrixDensity);
}
