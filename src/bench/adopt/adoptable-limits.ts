import { factOf } from '../../registry/facts-of-key.ts';
import { safeDirections, usualUnits } from '../../registry/generated/key-facts.ts';
import type { SafeDirection } from '../../registry/key-facts.ts';
import type { MethodName } from '../method-facts.ts';
import { allMethods } from '../methods.ts';
import type { ReducedResult, TrialResults } from '../reduction.ts';
import type { AdoptableLimit, AdoptableResult, SafeSide } from './adoptable-limit.ts';

/** What profiles can state, by method; apart from the methods, so that a program that only reduces needs no schema. */
const limitsByMethod: ReadonlyMap<string, readonly AdoptableLimit[]> = new Map(
  allMethods.map(({ method, adoptable }) => [method, adoptable.map(limitOf)]),
);

const allLimits = [...limitsByMethod.values()].flat();

function limitOf(result: AdoptableResult): AdoptableLimit {
  const { kind, place } = result;
  const safe = factOf<SafeDirection>(safeDirections, kind, place);
  const usualUnit = factOf<string>(usualUnits, kind, place);
  return {
    ...result,
    property: place.slice(place.lastIndexOf('.') + 1),
    safeSide: safeSideOf(result, safe),
    ...(usualUnit !== undefined && { unit: usualUnit }),
  };
}

/** A window is safe within its ends: above the low one, below the high one. */
function safeSideOf({ end, safeSide }: AdoptableResult, safe: SafeDirection | undefined): SafeSide {
  if (end !== undefined) return end === 'low' ? 'above' : 'below';
  return safeSide ?? (safe === 'above' ? 'above' : 'below');
}

/** What profiles of a kind can state of the results of a method. */
export function limitsOfMethod(name: MethodName, kind: string): readonly AdoptableLimit[] {
  return (limitsByMethod.get(name) ?? []).filter((limit) => limit.kind === kind);
}

/** The limits that a property of a profile states: two for a window, one for a single value, none for others. */
export function limitsOfProperty(kind: string, property: string): readonly AdoptableLimit[] {
  return allLimits.filter((limit) => limit.kind === kind && limit.property === property);
}

/** The result of a reduction that a statement rests on; `acceleration`, in mm/s2, tells several apart. */
export function resultFor(
  { results }: TrialResults,
  quantity: string,
  acceleration: number | undefined,
): ReducedResult | null {
  const all = results.filter((result) => result.quantity === quantity);
  const exact = all.find(({ at }) => at !== undefined && at.acceleration === acceleration);
  return exact ?? all.find(({ at }) => at === undefined) ?? null;
}
