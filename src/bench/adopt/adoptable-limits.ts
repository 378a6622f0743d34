import type { ReducedQuantity, ReducedResult, Reduction } from '../reduction.ts';

/** A property of a profile that states what a bench method finds out. */
export interface AdoptableLimit {
  readonly kind: 'filament' | 'machine';
  readonly property: string;
  readonly quantity: ReducedQuantity;
  /** On which side of what the readings show a stated value is safe. */
  readonly safeSide: 'below' | 'above';
  /** Unit in which people state it, where that is not the canonical one. */
  readonly unit?: string;
  /** The end of the property's range that it is; a property without is a single value. */
  readonly end?: 'low' | 'high';
}

/** What of a reduction profiles can state. */
export const adoptableLimits: readonly AdoptableLimit[] = [
  { kind: 'filament', property: 'meltFlow', quantity: 'meltFlow', safeSide: 'below' },
  { kind: 'filament', property: 'contourSpeed', quantity: 'contourSpeed', safeSide: 'below' },
  { kind: 'filament', property: 'shortestLayerTime', quantity: 'shortestLayerTime', safeSide: 'above' },
  { kind: 'filament', property: 'dryingTime', quantity: 'dryingTime', safeSide: 'above', unit: 'h' },
  {
    kind: 'filament',
    property: 'nozzleTemperature',
    quantity: 'lowestNozzleTemperature',
    safeSide: 'above',
    end: 'low',
  },
  {
    kind: 'filament',
    property: 'nozzleTemperature',
    quantity: 'highestNozzleTemperature',
    safeSide: 'below',
    end: 'high',
  },
  { kind: 'machine', property: 'soundLevel', quantity: 'soundLevel', safeSide: 'above' },
  { kind: 'machine', property: 'contourSpeed', quantity: 'contourSpeed', safeSide: 'below' },
  { kind: 'machine', property: 'meltFlow', quantity: 'meltFlow', safeSide: 'below' },
];

/** What profiles of a kind can state of a reduced quantity, or null. */
export function adoptableQuantity(
  quantity: ReducedQuantity,
  kind: AdoptableLimit['kind'],
): AdoptableLimit | null {
  return adoptableLimits.find((limit) => limit.quantity === quantity && limit.kind === kind) ?? null;
}

/** The limits that a property of a profile states: two for a window, one for a single value, none for others. */
export function limitsOfProperty(kind: string, property: string): readonly AdoptableLimit[] {
  return adoptableLimits.filter((limit) => limit.kind === kind && limit.property === property);
}

/** Whether readings that do not bracket a limit leave nothing on its safe side to state. */
export function supportsNothing({ censored }: ReducedResult, { safeSide }: AdoptableLimit): boolean {
  return censored !== null && censored === safeSide;
}

/** The result of a reduction that a statement rests on; `acceleration`, in mm/s2, tells several apart. */
export function resultFor(
  { results }: Reduction,
  quantity: ReducedQuantity,
  acceleration: number | undefined,
): ReducedResult | null {
  const all = results.filter((result) => result.quantity === quantity);
  const exact = all.find(({ at }) => at !== undefined && at.acceleration === acceleration);
  return exact ?? all.find(({ at }) => at === undefined) ?? null;
}

/** Options that write a quantity in the unit in which people state it. */
export function statedUnit({ unit }: AdoptableLimit): { readonly unit?: string } {
  return unit === undefined ? {} : { unit };
}
