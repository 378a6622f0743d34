import type { MethodName } from '../method.ts';
import { allMethods, methodOf } from '../methods.ts';
import type { ReducedResult, Reduction } from '../reduction.ts';
import type { AdoptableLimit } from './adoptable-limit.ts';

/** What profiles of a kind can state of the results of a method. */
export function limitsOfMethod(name: MethodName, kind: string): readonly AdoptableLimit[] {
  return methodOf(name).adoptable.filter((limit) => limit.kind === kind);
}

/** The limits that a property of a profile states: two for a window, one for a single value, none for others. */
export function limitsOfProperty(kind: string, property: string): readonly AdoptableLimit[] {
  return allMethods
    .flatMap(({ method }) => limitsOfMethod(method, kind))
    .filter((limit) => limit.property === property);
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
