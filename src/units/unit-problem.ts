import { quote } from '../text/quote.ts';
import { aQuantityOf, type Dimension, dimensionInfo } from './dimension.ts';
import { type QuantityProblem, quantityProblem } from './quantity-problem.ts';
import { suggestUnit } from './suggest-unit.ts';

/** `number` is the text before the unit, such as `75` or `20..75`; empty for a unit standing alone. */
function rewritten(number: string, code: string): string {
  return number === '' ? code : `${number} ${code}`;
}

/** A number without a unit. `bareNumber` comes from a number in the document, `missingUnit` from a text. */
export function withoutUnit(
  code: 'bareNumber' | 'missingUnit',
  number: string,
  dimension: Dimension,
): QuantityProblem {
  const { usualUnit } = dimensionInfo[dimension];
  const message = `${quote(number)} has no unit: ${aQuantityOf(dimension)} is a number with its unit`;
  const help = `if it is in ${usualUnit}, write \`${quote(rewritten(number, usualUnit))}\``;
  return quantityProblem(code, dimension, number, message, help);
}

/** A known unit of something else. */
export function wrongDimension(
  unitText: string,
  elsewhere: readonly Dimension[],
  dimension: Dimension,
  number = '',
): QuantityProblem {
  const { description, usualUnit } = dimensionInfo[dimension];
  const others = elsewhere.map((other) => dimensionInfo[other].description).join(' and ');
  const message = `${quote(unitText)} is a unit of ${others}, not of ${description}`;
  const help =
    number === ''
      ? `write a unit of ${description}, such as \`${usualUnit}\``
      : `if the number is ${aQuantityOf(dimension)} in ${usualUnit}, write \`${quote(rewritten(number, usualUnit))}\``;
  return quantityProblem('wrongDimension', dimension, unitText, message, help);
}

/** A text that is no unit at all, with the unit that it probably meant. */
export function unknownUnit(unitText: string, dimension: Dimension, number = ''): QuantityProblem {
  const message = `${quote(unitText)} is not a known unit`;
  const help = helpForUnknown(unitText, dimension, number);
  return quantityProblem('unknownUnit', dimension, unitText, message, help);
}

function helpForUnknown(unitText: string, dimension: Dimension, number: string): string {
  const { description, usualUnit } = dimensionInfo[dimension];
  const example = `\`${quote(rewritten(number, usualUnit))}\``;
  const suggestion = suggestUnit(unitText, dimension);
  if (suggestion === undefined) return `write a unit of ${description}, for example ${example}`;
  if (suggestion.dimension === dimension) {
    return `did you mean \`${suggestion.code}\`? Then write \`${quote(rewritten(number, suggestion.code))}\``;
  }
  const other = dimensionInfo[suggestion.dimension].description;
  return `\`${suggestion.code}\` comes near, but is a unit of ${other}; write a unit of ${description}, for example ${example}`;
}
