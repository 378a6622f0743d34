import { bracketedRoot } from '../physics/bracketed-root.ts';
import { filamentArea } from '../physics/filament-geometry.ts';
import { viscosityRatio } from '../physics/melt-viscosity.ts';
import { meanTemperatureAtFlow } from '../physics/melt-zone.ts';
import { channelFlow } from '../physics/nozzle-pressure.ts';
import type { Filament, Polymer } from '../registry/generated/documents.ts';
import type {
  CubicMillimetresPerSecond,
  DegreesCelsius,
  Megapascals,
  Millimetres,
  Newtons,
} from '../units/canonical.ts';
import { shown } from '../units/wording.ts';
import { familyNames, widest } from './families.ts';
import { highestDiffusivity, roomTemperature } from './melt-heat.ts';

/** A drive that pushes a filament through a melt zone and a nozzle. */
interface Push {
  readonly force: Newtons;
  readonly filament: Filament;
  readonly families: readonly Polymer[];
  readonly nozzleDiameter: Millimetres;
  readonly nozzleTemperature: DegreesCelsius;
  /** Null where it is not known: the melt then leaves at the nozzle temperature. */
  readonly meltZoneLength: Millimetres | null;
}

/** What a drive can push through a nozzle. */
export interface Traction {
  /** No more melt than this passes the nozzle. */
  readonly flow: CubicMillimetresPerSecond;
  /** Pressure that the strand hands on to the melt. */
  readonly pressure: Megapascals;
  /** Whether the strand yields before the drive has given all of its force. */
  readonly isStrandWeaker: boolean;
  /** Mean temperature at which that flow leaves the melt zone. */
  readonly meanTemperature: DegreesCelsius;
  /** How many times as viscous the melt is there as at the nozzle temperature. */
  readonly thickening: number;
  /** What was taken for granted. */
  readonly assumptions: string;
}

/** Stress that no strand of some families bears, in MPa: the highest compressive yield published; null where none is. */
export function strandStrength(families: readonly Polymer[]): Megapascals | null {
  return widest(families, 'compressiveYield')?.high ?? null;
}

/**
 * What a force pushes through a nozzle at most, never with more pressure than the strand bears: the more flow, the colder
 * and the more viscous the melt leaves the melt zone. Null where the viscosity of a family is not known. Everything unknown is
 * taken in favour of the flow, so that it errs to the high side: the thinnest melt published, a channel as short as its bore is
 * wide (common practice, no source), a filament that touches the whole melt zone, and no pressure for the inlet and a core
 * that is still solid.
 * Source: as `channelFlow`, `meanTemperatureAtFlow` and `viscosityRatio`; traction and conduction as limits of rate that
 * coincide: Go, Schiffres, Stevens & Hart, Additive Manufacturing 16 (2017) 1-11 (abstract).
 */
export function tractionOf(push: Push): Traction | null {
  const { force, filament, families, nozzleDiameter, nozzleTemperature } = push;
  const viscosity = widest(families, 'meltViscosity')?.low ?? 0;
  if (viscosity <= 0 || filament.diameter <= 0 || nozzleDiameter <= 0) return null;
  const strength = strandStrength(families) ?? Number.POSITIVE_INFINITY;
  const pushed = force / filamentArea(filament.diameter);
  const pressure = Math.min(pushed, strength);
  const hottest = channelFlow(viscosity, nozzleDiameter, nozzleDiameter / 2, pressure);
  const flow = withCooling(push, hottest);
  return {
    flow,
    pressure,
    isStrandWeaker: strength < pushed,
    meanTemperature: meanTemperature(push, flow),
    thickening: hottest / flow,
    assumptions: `${familyNames(families)} of ${shown(viscosity, 'viscosity')} at ${shown(nozzleTemperature, 'temperature')}, a channel as short as its bore is wide, no pressure for the inlet or a solid core`,
  };
}

/** Thicker than this no melt moves; finite, so that a root can be looked for. */
const stiff = 1e12;

/** The flow at which the melt, as viscous as it leaves the melt zone, takes the whole pressure; `hottest` where it stayed hot. */
function withCooling(push: Push, hottest: CubicMillimetresPerSecond): CubicMillimetresPerSecond {
  const excess = (logFlow: number) => {
    const ratio = thickeningAt(push, meanTemperature(push, Math.exp(logFlow)));
    return logFlow + Math.log(Math.min(ratio, stiff)) - Math.log(hottest);
  };
  const most = Math.log(hottest);
  return excess(most) <= 0 ? hottest : Math.exp(bracketedRoot(excess, most - Math.log(stiff), most));
}

function meanTemperature(
  { filament, families, nozzleTemperature, meltZoneLength }: Push,
  flow: CubicMillimetresPerSecond,
): DegreesCelsius {
  if (meltZoneLength === null || meltZoneLength <= 0) return nozzleTemperature;
  const zone = {
    wallTemperature: nozzleTemperature,
    entryTemperature: roomTemperature,
    diffusivity: highestDiffusivity({ families, filament }),
    heatedLength: meltZoneLength,
  };
  return meanTemperatureAtFlow(zone, flow);
}

/** Amorphous melts thicken on the way to their glass transition; crystals melt or do not, and their melt hardly thickens. */
function thickeningAt({ families, nozzleTemperature }: Push, temperature: DegreesCelsius): number {
  const crystalline = families.filter(({ structure }) => structure === 'semiCrystalline');
  const melting = widest(crystalline, 'melting');
  if (melting !== null) return temperature < Math.min(melting.low, nozzleTemperature) ? stiff : 1;
  const glass = widest(families, 'glassTransition');
  return glass === null || glass.low >= nozzleTemperature
    ? 1
    : viscosityRatio(temperature, nozzleTemperature, glass.low);
}
