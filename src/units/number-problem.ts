import { quote } from '../text/quote.ts';
import { type Dimension, dimensionInfo } from './dimension.ts';
import { notANumber } from './non-text.ts';
import { isNumber, mostSignificantDigits, spaces, trimSpaces } from './number-form.ts';
import { type QuantityProblem, quantityProblem } from './quantity-problem.ts';
import { findUnit } from './unit-table.ts';

const notFinite = /^[+\-\u2212]?\.?(?:nan|inf(?:inity)?|∞)(?![a-z])/i;
const separators = `.,_'’${spaces}`;
const loose = new RegExp(
  `^[+\\-\\u2212]?(?:0[xX][0-9a-fA-F]+|(?:\\d|[${separators}](?=\\d))+(?:[.,](?!\\.))?(?:[eE][+-]?\\d+)?)`,
);
const plainButLong = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d{1,2})?$/;

/** What looks like a number at the start of a text, whatever its form; empty when nothing does. */
export function looseNumber(text: string): string {
  return loose.exec(text)?.[0] ?? '';
}

/** What surrounds a number where it stands in a range: `190..` before it, or `..235 Cel` after it. */
interface Surroundings {
  readonly before?: string;
  readonly after?: string;
}

/** Why a text does not begin with a number in the form that is read. */
export function numberProblem(
  text: string,
  dimension: Dimension,
  around: Surroundings = {},
): QuantityProblem {
  const found = looseNumber(text);
  if (found === '' || notFinite.test(text)) return notANumber(text, dimension);
  const unitText = trimSpaces(text.slice(found.length));
  const unit = findUnit(unitText, dimension)?.code ?? dimensionInfo[dimension].usualUnit;
  const { before = '', after = ` ${unit}` } = around;
  const inPlace = (number: string) => `\`${quote(`${before}${number}${after}`)}\``;
  if (plainButLong.test(found)) return endlessNumber(found, dimension, inPlace);
  const readings = rewriteNumber(found).map(inPlace);
  const message = `${quote(found)} is not in the form that is read: ${flawOf(found)}`;
  const help = `write ${readings.length > 0 ? readings.join(' or ') : `a number such as \`${dimensionInfo[dimension].example}\``}`;
  return quantityProblem('numberForm', dimension, found, message, help);
}

function endlessNumber(
  found: string,
  dimension: Dimension,
  inPlace: (number: string) => string,
): QuantityProblem {
  const digits = found.replace(/[eE].*$/, '').replace(/\D/g, '').length;
  const message = `${quote(found)} has ${digits} digits, more than any measurement carries (${mostSignificantDigits} are read)`;
  const rounded = String(Number(Number(found).toPrecision(6)));
  const help = `round it: ${isNumber(rounded) ? inPlace(rounded) : `\`${dimensionInfo[dimension].example}\``}`;
  return quantityProblem('endlessNumber', dimension, found, message, help);
}

const flaws: readonly (readonly [RegExp, string])[] = [
  [/^[+\-\u2212]?0[xX]/, 'hexadecimal digits'],
  [/,/, 'a comma; the decimal sign is a point and thousands are not grouped'],
  [/[_'’]/, 'a sign between its digits'],
  [new RegExp(`[${spaces}]`), 'a space between its digits'],
  [/^\+/, 'a plus sign'],
  [/^\u2212/, 'a typographic minus sign; the hyphen is read'],
  [/\..*\./, 'more than one decimal point'],
  [/^-?\./, 'no digit before the decimal point'],
  [/\.(?:$|[eE])/, 'no digit after the decimal point'],
  [/^-?0\d/, 'a leading zero'],
];

function flawOf(found: string): string {
  return flaws.find(([pattern]) => pattern.test(found))?.[1] ?? 'an exponent of more than two digits';
}

/** The numbers that a wrongly written one may stand for: `1,240` may be 1.240 or 1240. */
export function rewriteNumber(found: string): string[] {
  if (/^[+\-\u2212]?0[xX]/.test(found))
    return found.startsWith('0') ? [String(Number(found))].filter(isNumber) : [];
  const joined = found
    .replace(/^\+/, '')
    .replace(/^\u2212/, '-')
    .replace(new RegExp(`[_'’${spaces}]`, 'g'), '');
  return decimalReadings(joined)
    .map((number) =>
      number
        .replace(/^(-?)\./, '$10.')
        .replace(/\.(?=$|[eE])/, '')
        .replace(/^(-?)0+(?=\d)/, '$1'),
    )
    .filter(isNumber);
}

function decimalReadings(number: string): string[] {
  const points = number.split('.').length - 1;
  const commas = number.split(',').length - 1;
  if (commas === 0) return [points > 1 ? number.replaceAll('.', '') : number];
  const commasGroup = number.replaceAll(',', '');
  const pointsGroup = number.replaceAll('.', '').replace(',', '.');
  if (points > 0 || commas > 1)
    return [number.lastIndexOf(',') > number.lastIndexOf('.') && commas === 1 ? pointsGroup : commasGroup];
  return /,\d{3}$/.test(number) ? [pointsGroup, commasGroup] : [pointsGroup];
}
