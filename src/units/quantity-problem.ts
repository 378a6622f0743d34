import { quote } from '../text/quote.ts';
import { type Dimension, dimensionInfo } from './dimension.ts';
import { unitsOf } from './unit-table.ts';

/** What is wrong with a text that should be a quantity. */
export type QuantityProblemCode =
  | 'bareNumber'
  | 'wrongDimension'
  | 'unknownUnit'
  | 'notANumber'
  | 'endlessNumber'
  | 'missingUnit'
  | 'numberForm'
  | 'belowAbsoluteZero'
  | 'rangeReversed'
  | 'rangeExpected'
  | 'singleExpected'
  | 'notText';

/** Why a text is not a quantity of the asked dimension. Every text is short and safe to print. */
export interface QuantityProblem {
  readonly code: QuantityProblemCode;
  /** What is wrong, with what was found. */
  readonly message: string;
  readonly found: string;
  /** What would do: the units of the dimension. */
  readonly allowed: string;
  /** What to do, with a rewritten example. */
  readonly help: string;
}

/** The units that would do, as a list for a message: `volume flow in mm3/s, mm3/min, …`. */
function allowedUnits(dimension: Dimension): string {
  const codes = unitsOf(dimension).map((unit) => unit.code);
  return `${dimensionInfo[dimension].description} in ${codes.join(', ')}`;
}

/** Builds a problem about `found`, which is shortened and made printable here. */
export function quantityProblem(
  code: QuantityProblemCode,
  dimension: Dimension,
  found: string,
  message: string,
  help: string,
): QuantityProblem {
  return { code, message, found: quote(found), allowed: allowedUnits(dimension), help };
}
