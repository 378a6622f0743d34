import type { Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { quote } from '../text/quote.ts';
import type { Money } from './canonical.ts';
import { type Dimension, dimensionInfo } from './dimension.ts';
import { describeNonText } from './non-text.ts';
import { type QuantityProblem, quantityProblem } from './quantity-problem.ts';
import { splitRange } from './range-form.ts';
import { readMeasure, warmEnough } from './read-measure.ts';
import { unknownUnit, wrongDimension } from './unit-problem.ts';
import { dimensionsOfUnit, findUnit, type Unit } from './unit-table.ts';

export type { QuantityRange } from './parse-range.ts';
export { parseRange } from './parse-range.ts';
export type { QuantityProblem, QuantityProblemCode } from './quantity-problem.ts';

/** A value with its unit, as one text gave it. */
export interface Quantity {
  /** In the canonical unit of the dimension; for money the amount in its own currency. */
  readonly value: number;
  /** The unit that was written; for a sound level it also tells the weighting. */
  readonly unit: Unit;
  readonly written: { readonly number: string; readonly unit: string };
  /** The same in the canonical form: number, one space, code. */
  readonly canonicalSpelling: string;
  readonly isCanonicalSpelling: boolean;
}

/**
 * Reads a quantity such as `75 mm3/s`. Print symbols (`mm³/s`) and a missing space are read too.
 * Anything else is a problem that says what was found, what would do and how to write it.
 */
export function parseQuantity(written: unknown, dimension: Dimension): Result<Quantity, QuantityProblem> {
  if (typeof written !== 'string') return failure(describeNonText(written, dimension));
  const measure = readMeasure(written, dimension);
  if (!measure.ok)
    return splitRange(written) === undefined ? measure : failure(rangeInstead(written, dimension));
  const checked = warmEnough(measure.value, dimension);
  if (!checked.ok) return checked;
  const { number, unit, unitText, value } = measure.value;
  const canonicalSpelling = `${number} ${unit.code}`;
  return success({
    value,
    unit,
    written: { number, unit: unitText },
    canonicalSpelling,
    isCanonicalSpelling: written === canonicalSpelling,
  });
}

function rangeInstead(written: string, dimension: Dimension): QuantityProblem {
  const message = `${quote(written)} is a range where a single value belongs`;
  const help = `write one value, such as \`${dimensionInfo[dimension].example}\``;
  return quantityProblem('singleExpected', dimension, written, message, help);
}

/** Reads a unit standing alone, such as the unit of a column: `mm3/s`. */
export function parseUnit(written: unknown, dimension: Dimension): Result<Unit, QuantityProblem> {
  if (typeof written !== 'string') return failure(unitNotText(written, dimension));
  const unit = findUnit(written, dimension);
  if (unit !== undefined) return success(unit);
  const elsewhere = dimensionsOfUnit(written);
  if (elsewhere.length > 0) return failure(wrongDimension(written, elsewhere, dimension));
  return failure(unknownUnit(written, dimension));
}

function unitNotText(written: unknown, dimension: Dimension): QuantityProblem {
  const found = String(typeof written === 'object' ? 'a structure' : written);
  const message = `${quote(found)} is not a text that names a unit`;
  const help = `write a unit, such as \`${dimensionInfo[dimension].usualUnit}\``;
  return quantityProblem('notText', dimension, found, message, help);
}

/** Reads a price such as `349 EUR`: the amount stays in its currency. */
export function parseMoney(written: unknown): Result<Money, QuantityProblem> {
  const quantity = parseQuantity(written, 'money');
  if (!quantity.ok) return quantity;
  return success({ amount: quantity.value.value, currency: quantity.value.unit.code });
}
