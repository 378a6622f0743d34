import { quote } from '../text/quote.ts';
import { type Dimension, dimensionInfo } from './dimension.ts';
import { type QuantityProblem, quantityProblem } from './quantity-problem.ts';
import { withoutUnit } from './unit-problem.ts';

/** The problem with a value that is no text: a bare number, or something that holds no quantity at all. */
export function describeNonText(written: unknown, dimension: Dimension): QuantityProblem {
  if (typeof written === 'number') {
    return Number.isFinite(written)
      ? withoutUnit('bareNumber', String(written), dimension)
      : notANumber(String(written), dimension);
  }
  const found = nameOf(written);
  const message = `${quote(found)} stands where a quantity belongs`;
  return quantityProblem('notText', dimension, found, message, askForText(dimension));
}

/** A text that holds no number, or one that is not finite. */
export function notANumber(found: string, dimension: Dimension): QuantityProblem {
  const message = found === '' ? 'a number is missing' : `${quote(found)} is not a number`;
  return quantityProblem('notANumber', dimension, found, message, askForText(dimension));
}

function askForText(dimension: Dimension): string {
  return `write a number, a space and a unit: \`${dimensionInfo[dimension].example}\`; leave out what is not known`;
}

function nameOf(written: unknown): string {
  if (written === null || written === undefined) return 'nothing';
  if (Array.isArray(written)) return 'a list';
  return typeof written === 'object' ? 'a map' : String(written);
}
