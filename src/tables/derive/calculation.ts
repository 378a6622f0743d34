import type { Dimension } from '../../units/dimension.ts';
import type { SourcedValue } from './sourced-value.ts';

/** A number in a formula. */
export interface Term {
  /** Letter that stands for it in the formula. */
  readonly symbol: string;
  readonly what: string;
  /** In the canonical unit of the dimension; a share is a fraction. */
  readonly value: number;
  /** Null for a plain number, whose unit `what` names if it has one. */
  readonly dimension: Dimension | null;
  /** What it rests on; null where it is the result of an earlier calculation, of a fit, or asked for. */
  readonly ground: SourcedValue | null;
  /** Where a number without a ground comes from; from an earlier calculation unless given. */
  readonly origin?: 'above' | 'asked' | 'fitted' | 'solved';
}

/** One step of the arithmetic behind a row, so that it can be followed by hand. */
export interface Calculation {
  readonly symbol: string;
  readonly what: string;
  /** The right-hand side, in the symbols of the terms: `Q * (1 - m) / A`. */
  readonly formula: string;
  readonly terms: readonly Term[];
  /** What terms were fitted to, where they stand in no profile themselves. */
  readonly fittedTo?: readonly SourcedValue[];
  /** What the formula gives, in the canonical unit of the dimension. */
  readonly exact: number;
  readonly dimension: Dimension;
  /** How the result was rounded to the safe side; null where it was not. */
  readonly rounded: {
    readonly direction: 'down' | 'up';
    readonly step: SourcedValue;
    readonly value: number;
  } | null;
}

/** A term that rests on a ground whose value is a single number. */
export function sourcedTerm(symbol: string, ground: SourcedValue, value: number): Term {
  return { symbol, what: ground.what, value, dimension: ground.dimension, ground };
}

/** A term that an earlier calculation gave. */
export function resultTerm({ symbol, what, exact, dimension, rounded }: Calculation): Term {
  return { symbol, what, value: rounded?.value ?? exact, dimension, ground: null };
}

/** The sourcedValues of a calculation: of its terms, what they were fitted to, and the step to which it was rounded. */
export function sourcedValuesIn({ terms, fittedTo = [], rounded }: Calculation): SourcedValue[] {
  const used = [...terms.flatMap(({ ground }) => ground ?? []), ...fittedTo];
  return rounded === null ? used : [...used, rounded.step];
}
