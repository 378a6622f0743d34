import { fillerDensity } from '../physics/filler-density.ts';
import { readFillerSymbol } from '../physics/filler-symbol.ts';
import { densityOfMixture, type MixturePart } from '../physics/mixture.ts';
import { parsePlasticsDesignation } from '../physics/plastics-designation.ts';
import type { Filament } from '../registry/generated/documents.ts';
import type { Registry } from '../registry/registry.ts';
import type { Fraction, GramsPerCubicMillimetre } from '../units/canonical.ts';
import { type Envelope, familiesOf, isFoamed, widest } from './families.ts';

/** Pigments and additives shift the density of a family by so much (common practice, no source). */
export const pigmentAllowance: Fraction = 0.03;
/** Of a blend the shares are not known, and others than the named ones are in it for flow, toughness or fire (common practice, no source). */
export const blendAllowance: Fraction = 0.06;
/** Filaments with fillers hold voids, which make them lighter than the mixing rule says (common practice, no source). */
export const voidAllowance: Fraction = 0.08;

/** Foamed filament holds so much gas at most (common practice, no source: sold from about 0.4 g/cm3 on). */
const largestPorosity: Fraction = 0.75;
/** Flame retardants: mass fraction and density, in g/mm³, of brominated ones with antimony trioxide (from memory, common practice). */
const flameRetardant: MixturePart = { massFraction: 0.25, density: 3.3e-3 };

/** No grade and no measurement is so far off (common practice, no source); between this and the allowance lies a warning. */
export const impossiblyOff = 0.2;

/** The densities, in g/mm³, that a filament of known families and fillers can have. */
export interface DensityEnvelope extends Envelope {
  /** How far below and above a good profile may lie, as a fraction. */
  readonly slack: { readonly below: Fraction; readonly above: Fraction };
  readonly filled: boolean;
}

/**
 * The density of a filament by its families and fillers: 1/rho = sum of w_i/rho_i, with the lightest and the
 * heaviest of each. Null where a family or a filler is not known well enough.
 * Source: additivity of volumes, see `densityOfMixture`.
 */
export function densityEnvelope(filament: Filament, registry: Registry): DensityEnvelope | null {
  const matrix = widest(familiesOf(filament, registry), 'density');
  if (matrix === null) return null;
  const fillers = filament.fillers ?? [];
  const densities = fillers.map(({ symbol }) => {
    const filler = readFillerSymbol(symbol);
    return filler && fillerDensity(filler);
  });
  const filled = fillers.reduce((sum, { massFraction }) => sum + massFraction, 0);
  if (filled >= 1 || densities.includes(undefined)) return null;
  const mixture = (end: 'low' | 'high'): GramsPerCubicMillimetre => {
    const parts = fillers.map(({ massFraction }, index): MixturePart => {
      return { massFraction, density: densities[index]?.[end] ?? matrix[end] };
    });
    return densityOfMixture([{ massFraction: 1 - filled, density: matrix[end] }, ...parts]);
  };
  const above = isBlend(filament) ? blendAllowance : pigmentAllowance;
  const below = fillers.length > 0 ? voidAllowance : above;
  return {
    low: mixture('low') * (isFoamed(filament) ? 1 - largestPorosity : 1),
    high: isFlameRetardant(filament) ? withFlameRetardant(mixture('high')) : mixture('high'),
    slack: { below, above },
    filled: fillers.length > 0,
    source: [matrix.source, ...new Set(densities.flatMap((known) => known?.source ?? []))].join('; '),
  };
}

function withFlameRetardant(density: GramsPerCubicMillimetre): GramsPerCubicMillimetre {
  return densityOfMixture([{ massFraction: 1 - flameRetardant.massFraction, density }, flameRetardant]);
}

function isFlameRetardant({ designation }: Filament): boolean {
  const parsed = parsePlasticsDesignation(designation);
  return parsed.ok && parsed.value.flameRetardant;
}

function isBlend({ designation }: Filament): boolean {
  const parsed = parsePlasticsDesignation(designation);
  return parsed.ok && parsed.value.polymers.length > 1;
}

/** By what fraction a density lies below or above an envelope; 0 inside of it. */
export function densityOff(density: GramsPerCubicMillimetre, { low, high }: DensityEnvelope): Fraction {
  if (density < low) return density / low - 1;
  return density > high ? density / high - 1 : 0;
}
