import { allMethods } from '../methods.ts';
import type { ReducedResult, Reduction } from '../reduction.ts';
import type { AdoptableLimit } from './adoptable-limit.ts';

/** What of reductions profiles can state. */
const adoptableLimits: readonly AdoptableLimit[] = allMethods.flatMap(({ adoptable }) => adoptable);

/** The limits that a property of a profile states: two for a window, one for a single value, none for others. */
export function limitsOfProperty(kind: string, property: string): readonly AdoptableLimit[] {
  return adoptableLimits.filter((limit) => limit.kind === kind && limit.property === property);
}

/** The result of a reduction that a statement rests on; `acceleration`, in mm/s2, tells several apart. */
export function resultFor(
  { results }: Reduction,
  quantity: string,
  acceleration: number | undefined,
): ReducedResult | null {
  const all = results.filter((result) => result.quantity === quantity);
  const exact = all.find(({ at }) => at !== undefined && at.acceleration === acceleration);
  return exact ?? all.find(({ at }) => at === undefined) ?? null;
}
