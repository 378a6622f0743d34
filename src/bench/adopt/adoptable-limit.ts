import type { Trial } from '../../registry/generated/documents.ts';
import type { safeDirections } from '../../registry/generated/key-facts.ts';
import type { ReducedResult } from '../reduction.ts';

/** A condition of a trial that an adopted statement names. */
export type StatedCondition =
  | 'machine'
  | 'nozzle'
  | 'filament'
  | 'nozzleTemperature'
  | 'acceleration'
  | 'batch';

/** On which side of what readings show a value is safe. */
export type SafeSide = 'below' | 'above' | 'inside';

/** What a method knows of a limit that profiles can state. */
interface MethodLimit {
  /** The result of the method that it states. */
  readonly quantity: string;
  /** The end of the property's range that it is; a property without is a single value. */
  readonly end?: 'low' | 'high';
  /** The safe side where the schema leaves it open. */
  readonly safeSide?: SafeSide;
  /** What the value holds for, of the conditions of its trial. */
  readonly holdsFor: readonly StatedCondition[];
  /** What a statement must say besides; a bound says so itself. */
  readonly note?: (trial: Trial) => string | null;
}

/** A result of a bench method that a property of a profile states, as the method declares it. */
export interface AdoptableResult extends MethodLimit {
  readonly kind: 'filament' | 'machine';
  /** Where the property stands: `hotEnds[].meltFlow`. */
  readonly place: string;
}

/** The same with what the schema says of the property. */
export interface AdoptableLimit extends AdoptableResult {
  readonly property: string;
  /** On which side of what the readings show a stated value is safe; `inside` is neither, only within the interval. */
  readonly safeSide: SafeSide;
  /** Unit in which people state it, where that is not the canonical one. */
  readonly unit?: string;
}

/** A result that the property at a place of the schema states. */
export function adoptableAt<OfKind extends AdoptableResult['kind']>(
  kind: OfKind,
  place: keyof (typeof safeDirections)[OfKind] & string,
  limit: MethodLimit,
): AdoptableResult {
  return { kind, place, ...limit };
}

/** Whether readings that do not bracket a limit leave nothing on its safe side to state. */
export function supportsNothing({ censored }: ReducedResult, { safeSide }: AdoptableLimit): boolean {
  return censored !== null && (safeSide === 'inside' || censored === safeSide);
}

/** Options that write a quantity in the unit in which people state it. */
export function statedUnit({ unit }: AdoptableLimit): { readonly unit?: string } {
  return unit === undefined ? {} : { unit };
}
