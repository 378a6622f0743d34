import type { Result } from '../result.ts';
import { failure, success } from '../result.ts';
import { quote } from '../text/quote.ts';
import { toCanonical } from './convert-unit.ts';
import { type Dimension, dimensionInfo } from './dimension.ts';
import { readNumber, trimSpaces } from './number-form.ts';
import { looseNumber, numberProblem } from './number-problem.ts';
import { type QuantityProblem, quantityProblem } from './quantity-problem.ts';
import { unknownUnit, withoutUnit, wrongDimension } from './unit-problem.ts';
import { dimensionsOfUnit, findUnit, type Unit } from './unit-table.ts';

/** One number and its unit, as read from a text. */
export interface Measure {
  readonly number: string;
  readonly unitText: string;
  readonly unit: Unit;
  /** In the canonical unit. */
  readonly value: number;
}

/** 0 K (BIPM SI Brochure, 2.3.1: t/°C = T/K - 273.15). */
const absoluteZeroCelsius = -273.15;

/** Reads one number with its unit; `prefix` is what stands before it in a range, for the messages. */
export function readMeasure(
  text: string,
  dimension: Dimension,
  prefix = '',
): Result<Measure, QuantityProblem> {
  const trimmed = trimSpaces(text);
  const read = readNumber(trimmed);
  if (read === undefined) return failure(numberProblem(trimmed, dimension, { before: prefix }));
  const { number, rest } = read;
  const unitText = trimSpaces(rest);
  const unit = isUnitText(rest) ? findUnit(unitText, dimension) : undefined;
  if (unit === undefined) return failure(unitFault(trimmed, number, rest, dimension, prefix));
  return success({ number, unitText, unit, value: toCanonical(Number(number), unit) });
}

/** The unit `1` needs a space before it, or `0.51` would be 0.5 of it. */
function isUnitText(rest: string): boolean {
  return !/^\d/.test(rest);
}

function unitFault(
  text: string,
  number: string,
  rest: string,
  dimension: Dimension,
  prefix: string,
): QuantityProblem {
  const unitText = trimSpaces(rest);
  if (unitText === '') return withoutUnit('missingUnit', `${prefix}${number}`, dimension);
  const elsewhere = isUnitText(rest) ? dimensionsOfUnit(unitText) : [];
  if (elsewhere.length > 0) return wrongDimension(unitText, elsewhere, dimension, `${prefix}${number}`);
  if (looseNumber(text).length > number.length) return numberProblem(text, dimension, { before: prefix });
  return unknownUnit(unitText, dimension, `${prefix}${number}`);
}

/** Refuses a temperature below absolute zero: the one thing about a single value that its form does not show. */
export function warmEnough(measure: Measure, dimension: Dimension): Result<Measure, QuantityProblem> {
  if (dimension !== 'temperature' || measure.value >= absoluteZeroCelsius) return success(measure);
  const found = `${measure.number} ${measure.unit.code}`;
  const message = `${quote(found)} is below absolute zero (${absoluteZeroCelsius} Cel)`;
  const help = `check the sign and the unit; a temperature is written like \`${dimensionInfo.temperature.example}\``;
  return failure(quantityProblem('belowAbsoluteZero', dimension, found, message, help));
}
