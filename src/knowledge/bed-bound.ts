import type { Filament, Machine, Polymer } from '../registry/generated/documents.ts';
import { highestStated } from '../registry/stated.ts';
import type { DegreesCelsius } from '../units/canonical.ts';
import { shown } from '../units/wording.ts';
import { widest } from './families.ts';
import { roomTemperature } from './melt-heat.ts';
import { type Softening, softeningOf } from './softening.ts';

/** A part stands on a bed that is a little above its softening; so far above it sinks (common practice, no source). */
export const aboveSoftening = 30;

/** How warm the bed of a machine gets: what is stated, or the room where it has no heater; null where neither is known. */
export function bedReach({ bed }: Machine): DegreesCelsius | null {
  return highestStated(bed.temperatureLimit) ?? (bed.heated === false ? roomTemperature : null);
}

/** The bed temperature above which a part of a filament melts away; null where nothing is known of its families. */
export function bedBound(filament: Filament, families: readonly Polymer[]): Softening | null {
  const melting = families.some(({ structure }) => structure === 'semiCrystalline')
    ? widest(families, 'melting')
    : null;
  if (melting !== null) {
    return {
      value: melting.high,
      text: `${shown(melting.high, 'temperature')}, where the polymer melts`,
      source: melting.source,
    };
  }
  if (!families.some(({ structure }) => structure === 'amorphous')) return null;
  const softening = softeningOf(filament, families);
  if (softening === null) return null;
  const value = softening.value + aboveSoftening;
  return { ...softening, value, text: `${aboveSoftening} K above ${softening.text}` };
}
