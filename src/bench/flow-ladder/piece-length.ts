import { filamentLength, filamentMass } from '../../physics/filament-geometry.ts';
import type {
  Fraction,
  Grams,
  GramsPerCubicMillimetre,
  Millimetres,
  MillimetresPerSecond,
  Seconds,
} from '../../units/canonical.ts';
import { roundUp } from '../../units/round-to-step.ts';
import { largestScaleShare } from '../facts/instrument-facts.ts';

/** The piece of filament that every step of a ladder feeds. */
export interface Piece {
  readonly length: Millimetres;
  /** Of what comes out at full delivery. */
  readonly mass: Grams;
  /** Part of that mass that the step of the scale is. */
  readonly scaleShare: Fraction;
}

/** Beyond the onset a piece lacks up to this share of its mass, and must be heavy enough all the same. */
const largestDeficit = 0.35;
/** Half a millimetre lost in cutting is a tenth of a per cent of it (common practice, no source). */
const shortest: Millimetres = 400;
/** Pressure in the melt settles within a second or two; a piece takes longer (common practice, no source). */
const shortestDuration: Seconds = 5;

/**
 * The length, in mm, to feed at every step, so that the step of the scale (g) stays below 0.5 % even of the lightest
 * piece, rounded up to what a bench marks off; density in g/mm³, diameter in mm, fastest feed in mm/s.
 */
export function pieceFor(
  resolution: Grams,
  density: GramsPerCubicMillimetre,
  diameter: Millimetres,
  fastest: MillimetresPerSecond,
): Piece {
  const lightest = resolution / largestScaleShare;
  const needed = Math.max(
    filamentLength(lightest / (1 - largestDeficit), density, diameter),
    shortest,
    fastest * shortestDuration,
  );
  const length = roundUp(needed, needed > 1000 ? 100 : 50);
  const mass = filamentMass(length, density, diameter);
  return { length, mass, scaleShare: resolution / mass };
}
