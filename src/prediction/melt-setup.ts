import type { Filament, Polymer } from '../registry/generated/documents.ts';
import type { FittedNozzle } from '../registry/nozzle.ts';
import { highestStated } from '../registry/stated.ts';
import type { DegreesCelsius } from '../units/canonical.ts';
import { meltCapacity } from './melt-capacity.ts';

/** A filament in a hot end at a nozzle temperature. */
export interface MeltSetup extends FittedNozzle {
  readonly filament: Filament | null;
  readonly families: readonly Polymer[];
  readonly nozzleTemperature: DegreesCelsius;
}

/** A factor with the doubt that comes with it: the truth is thought to lie within `spread` times and a `spread`th. */
interface Scaling {
  readonly factor: number;
  readonly spread: number;
}

/**
 * How the flow limit grows with the bore of the nozzle, as a power, and how far that power may be off: between no
 * influence, where melting alone limits, and the full ratio of diameters and more, where pressure does (common practice,
 * no source).
 */
const borePower = { middle: 0.7, doubt: 0.3 };

/**
 * From the flow limit of one setup to that of another: by what conduction gives each of them (length of the melt zone,
 * nozzle temperature, family) and by the bore of the nozzle. Null where the melt zones of two hot ends cannot be compared.
 */
export function scaling(from: MeltSetup, to: MeltSetup): Scaling | null {
  const lengths = comparableLengths(from, to);
  if (lengths === null) return null;
  const source = meltCapacity(from.families, from.nozzleTemperature, lengths.from);
  const target = meltCapacity(to.families, to.nozzleTemperature, lengths.to);
  const heat = source === null || target === null ? lengths.to / lengths.from : target.flow / source.flow;
  const bores = to.nozzle.diameter / from.nozzle.diameter;
  return {
    factor: heat * bores ** borePower.middle,
    spread: Math.max(bores, 1 / bores) ** borePower.doubt,
  };
}

/** The length of a melt zone cancels within one hot end, whether or not it is known. */
function comparableLengths(from: MeltSetup, to: MeltSetup): { from: number; to: number } | null {
  if (from.hotEnd === to.hotEnd) return { from: 1, to: 1 };
  const lengths = {
    from: highestStated(from.hotEnd.meltZoneLength),
    to: highestStated(to.hotEnd.meltZoneLength),
  };
  const { from: a, to: b } = lengths;
  return a === null || b === null || a <= 0 || b <= 0 ? null : { from: a, to: b };
}
