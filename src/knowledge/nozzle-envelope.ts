import type { Polymer } from '../registry/generated/documents.ts';
import type { DegreesCelsius, Range } from '../units/canonical.ts';
import { shown } from '../units/wording.ts';
import { type Envelope, familyNames, nozzleLimit, widest } from './families.ts';

/** An amorphous melt flows through a nozzle from about so far above its glass transition (common practice, no source). */
const flowsAboveGlass = 80;
/** Grades of a family differ by so much from the tables, and so do thermometers in hot ends (common practice, no source). */
export const gradeAllowance = 10;
/** How far good settings lie outside of the usual ones of their family (common practice, no source). */
export const usualAllowance = 20;
/** Fillers thicken the melt, which is met with more heat (common practice, no source). */
export const fillerAllowance = 15;

/** Blowing agents are set free by more heat than the polymer alone is given (common practice, no source). */
const foamingAllowance = 20;

/** A bound of nozzle temperatures and where it comes from. */
interface NozzleBound {
  readonly value: DegreesCelsius;
  /** `250 Cel, which PLA is not to exceed`. */
  readonly text: string;
  readonly source: string;
}

/** The nozzle temperatures that a family can be extruded at. */
interface NozzleEnvelope {
  /** Below it nothing flows. */
  readonly lowest: NozzleBound | null;
  /** Not to be exceeded. */
  readonly highest: NozzleBound | null;
  readonly usual: Envelope | null;
}

/** A nozzle temperature that cannot be: too cold to flow, or hotter than the polymer bears. */
interface ImpossibleEnd {
  readonly value: DegreesCelsius;
  readonly bound: NozzleBound;
  /** `too hot: it lies above 250 Cel, which PLA is not to exceed`. */
  readonly text: string;
}

export function nozzleEnvelope(families: readonly Polymer[], foamed = false): NozzleEnvelope {
  const [limit, usual] = [nozzleLimit(families), widest(families, 'nozzleTemperature')];
  const names = familyNames(families);
  const more = foamed ? foamingAllowance : 0;
  return {
    lowest: coldest(families.map(lowestOf)),
    highest: limit && {
      value: limit.value + more,
      source: limit.source,
      text: `${shown(limit.value + more, 'temperature')}, which ${foamed ? 'foaming ' : ''}${names} is not to exceed`,
    },
    usual: usual && { ...usual, high: usual.high + more },
  };
}

/** The end of a range of nozzle temperatures that cannot be; null where both can. */
export function impossibleEnd(
  { low, high }: Range,
  { lowest, highest }: NozzleEnvelope,
): ImpossibleEnd | null {
  if (highest !== null && high > highest.value + gradeAllowance)
    return { value: high, bound: highest, text: `too hot: it lies above ${highest.text}` };
  if (lowest !== null && low < lowest.value - gradeAllowance)
    return { value: low, bound: lowest, text: `too cold: it lies below ${lowest.text}` };
  return null;
}

/** The range of nozzle temperatures that needs no question, filled grades a little hotter; null where none is known. */
export function unquestioned({ usual }: NozzleEnvelope, filled: boolean): Range | null {
  if (usual === null) return null;
  return {
    low: usual.low - usualAllowance,
    high: usual.high + usualAllowance + (filled ? fillerAllowance : 0),
  };
}

function lowestOf(family: Polymer): NozzleBound | null {
  const melting = family.structure === 'semiCrystalline' ? widest([family], 'melting') : null;
  if (melting !== null) {
    const text = `${shown(melting.low, 'temperature')}, where ${family.id} begins to melt`;
    return { value: melting.low, text, source: melting.source };
  }
  const glass = family.structure === 'amorphous' ? widest([family], 'glassTransition') : null;
  if (glass === null) return null;
  const value = glass.low + flowsAboveGlass;
  const text = `${shown(value, 'temperature')}, ${flowsAboveGlass} K above the glass transition of ${family.id}`;
  return { value, text, source: glass.source };
}

/** The coldest of several bounds; null where one of them is not known. */
function coldest(bounds: readonly (NozzleBound | null)[]): NozzleBound | null {
  const [first = null, ...others] = bounds;
  return others.reduce((a, b) => (a === null || b === null ? null : a.value <= b.value ? a : b), first);
}
