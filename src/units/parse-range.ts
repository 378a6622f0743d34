import type { Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { quote } from '../text/quote.ts';
import type { Range } from './canonical.ts';
import { toCanonical } from './convert-unit.ts';
import { aQuantityOf, type Dimension, dimensionInfo } from './dimension.ts';
import { describeNonText } from './non-text.ts';
import { isNumber } from './number-form.ts';
import { numberProblem } from './number-problem.ts';
import { type QuantityProblem, quantityProblem } from './quantity-problem.ts';
import { cutAtDots, type RangeParts, splitRange } from './range-form.ts';
import { type Measure, readMeasure, warmEnough } from './read-measure.ts';
import type { Unit } from './unit-table.ts';

/** Two ends in one unit, as one text gave them; `low` and `high` are in the canonical unit. */
export interface QuantityRange extends Range {
  readonly unit: Unit;
  readonly written: { readonly low: string; readonly high: string; readonly unit: string };
  /** The same in the canonical form: `190..235 Cel`. */
  readonly canonicalSpelling: string;
  readonly isCanonicalSpelling: boolean;
}

/**
 * Reads a range such as `190..235 Cel`: both ends in the one unit at the end, the lower first (equal ends are a
 * range too). Anything else is a problem that says how to write it.
 */
export function parseRange(written: unknown, dimension: Dimension): Result<QuantityRange, QuantityProblem> {
  if (typeof written !== 'string') return failure(describeNonText(written, dimension));
  const parts = cutAtDots(written);
  if (parts === undefined) return failure(notARange(written, dimension));
  if (!isNumber(parts.left)) return failure(leftProblem(written, parts, dimension));
  const high = readMeasure(parts.right, dimension, `${parts.left}..`);
  if (!high.ok) return high;
  const low = withUnit(parts.left, high.value);
  const checked = warmEnough(low, dimension);
  return checked.ok ? inOrder(written, low, high.value, dimension) : checked;
}

/** The lower end borrows the unit of the upper one. */
function withUnit(number: string, { unit, unitText }: Measure): Measure {
  return { number, unit, unitText, value: toCanonical(Number(number), unit) };
}

function inOrder(
  written: string,
  low: Measure,
  high: Measure,
  dimension: Dimension,
): Result<QuantityRange, QuantityProblem> {
  const { unit, unitText } = high;
  if (low.value > high.value) {
    return failure(reversed(written, `${high.number}..${low.number} ${unit.code}`, dimension));
  }
  const canonicalSpelling = `${low.number}..${high.number} ${unit.code}`;
  return success({
    low: low.value,
    high: high.value,
    unit,
    written: { low: low.number, high: high.number, unit: unitText },
    canonicalSpelling,
    isCanonicalSpelling: written === canonicalSpelling,
  });
}

function reversed(written: string, swapped: string, dimension: Dimension): QuantityProblem {
  const message = `${quote(written)} runs backwards: its first end is the higher one`;
  return quantityProblem(
    'rangeReversed',
    dimension,
    written,
    message,
    `if both ends are right, write \`${quote(swapped)}\``,
  );
}

/** The text holds no `..`: a range in another notation, a single value, or nothing like it. */
function notARange(written: string, dimension: Dimension): QuantityProblem {
  const parts = splitRange(written);
  if (parts !== undefined) return rewrittenRange(written, parts, dimension);
  const single = readMeasure(written, dimension);
  if (!single.ok) return single.error;
  const message = `${quote(written)} is a single value where a range belongs`;
  const help = `write both ends, such as \`${dimensionInfo[dimension].exampleRange}\``;
  return quantityProblem('rangeExpected', dimension, written, message, help);
}

function rewrittenRange(written: string, parts: RangeParts, dimension: Dimension): QuantityProblem {
  const message = `${quote(written)} is not in the form of a range: the ends of ${aQuantityOf(dimension)} are joined by two points`;
  const high = readMeasure(parts.right, dimension);
  const example = high.ok
    ? `${parts.left}..${high.value.number} ${high.value.unit.code}`
    : dimensionInfo[dimension].exampleRange;
  return quantityProblem('rangeExpected', dimension, written, message, `write \`${quote(example)}\``);
}

/** The first end is not a plain number: it carries the unit too, or is misspelt. */
function leftProblem(written: string, parts: RangeParts, dimension: Dimension): QuantityProblem {
  const high = readMeasure(parts.right, dimension);
  const tail = high.ok ? `..${high.value.number} ${high.value.unit.code}` : undefined;
  const low = readMeasure(parts.left, dimension);
  if (!low.ok) {
    const misspelt = low.error.code === 'numberForm' || low.error.code === 'endlessNumber';
    return misspelt && tail !== undefined ? numberProblem(parts.left, dimension, { after: tail }) : low.error;
  }
  const message = `${quote(written)} has a unit at its first end: the one at the end of a range serves both`;
  const sameUnit = high.ok && high.value.unit === low.value.unit;
  const help = sameUnit
    ? `write \`${quote(`${low.value.number}${tail}`)}\``
    : `write both ends in one unit, such as \`${dimensionInfo[dimension].exampleRange}\``;
  return quantityProblem('rangeExpected', dimension, written, message, help);
}
