import { factOf } from '../../registry/facts-of-key.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import { safeDirections, usualUnits } from '../../registry/generated/key-facts.ts';
import type { SafeDirection } from '../../registry/key-facts.ts';
import type { ReducedResult } from '../reduction.ts';

/** A condition of a trial that an adopted statement names. */
export type StatedCondition = 'machine' | 'nozzle' | 'nozzleTemperature' | 'acceleration';

/** A property of a profile that states what a bench method finds out. */
export interface AdoptableLimit {
  readonly kind: 'filament' | 'machine';
  readonly property: string;
  /** The result of the method that it states. */
  readonly quantity: string;
  /** On which side of what the readings show a stated value is safe. */
  readonly safeSide: 'below' | 'above';
  /** Unit in which people state it, where that is not the canonical one. */
  readonly unit?: string;
  /** The end of the property's range that it is; a property without is a single value. */
  readonly end?: 'low' | 'high';
  /** What the value holds for, of the conditions of its trial. */
  readonly holdsFor: readonly StatedCondition[];
  /** What a statement must say besides; a bound says so itself. */
  readonly note?: (trial: Trial) => string | null;
}

/** What a method knows of a limit that profiles can state. */
type MethodLimit = Pick<AdoptableLimit, 'quantity' | 'end' | 'holdsFor' | 'note'>;

/** The limit that a property states; its safe side and unit are what the schema says of the property. */
export function adoptableAt<OfKind extends AdoptableLimit['kind']>(
  kind: OfKind,
  place: keyof (typeof safeDirections)[OfKind] & string,
  limit: MethodLimit,
): AdoptableLimit {
  const safe = factOf<SafeDirection>(safeDirections, kind, place);
  const usualUnit = factOf<string>(usualUnits, kind, place);
  // A window is safe inside.
  const isSafeAbove = limit.end === undefined ? safe === 'above' : limit.end === 'low';
  return {
    kind,
    property: place.slice(place.lastIndexOf('.') + 1),
    safeSide: isSafeAbove ? 'above' : 'below',
    ...(usualUnit !== undefined && { unit: usualUnit }),
    ...limit,
  };
}

/** Whether readings that do not bracket a limit leave nothing on its safe side to state. */
export function supportsNothing({ censored }: ReducedResult, { safeSide }: AdoptableLimit): boolean {
  return censored !== null && censored === safeSide;
}

/** Options that write a quantity in the unit in which people state it. */
export function statedUnit({ unit }: AdoptableLimit): { readonly unit?: string } {
  return unit === undefined ? {} : { unit };
}
