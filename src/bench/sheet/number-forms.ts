/** The sign before the decimals of a number. */
export type DecimalSign = '.' | ',';

/** What a text is as a number with a decimal point and with a decimal comma; null where it is none. */
export interface NumberForms {
  readonly '.': number | null;
  readonly ',': number | null;
}

/** Blanks and apostrophes between thousands, as spreadsheets print them. */
const groupSigns = [' ', '\u00A0', '\u2009', '\u202F', "'", '\u2019'];

const patterns = { '.': patternsWith('.'), ',': patternsWith(',') } as const;

/** Plain digits, or groups of three with the same sign between them; then decimals and an exponent. */
function patternsWith(decimal: DecimalSign): { readonly plain: RegExp; readonly grouped: RegExp } {
  const sign = decimal === '.' ? '\\.' : ',';
  const other = decimal === '.' ? ',' : '.';
  const groups = [...groupSigns, other].map((group) => `[${group}]`);
  const exponent = '(?:[eE][+-]?\\d{1,3})?';
  return {
    plain: new RegExp(`^[+-]?(?:\\d+${sign}?\\d*|${sign}\\d+)${exponent}$`),
    grouped: new RegExp(
      `^[+-]?[1-9]\\d{0,2}(?:${groups.map((group) => `(?:${group}\\d{3})+`).join('|')})(?:${sign}\\d+)?$`,
    ),
  };
}

/** Reads a text as a number in both ways. */
export function numberForms(text: string): NumberForms {
  return { '.': numberWith(text, '.'), ',': numberWith(text, ',') };
}

function numberWith(text: string, decimal: DecimalSign): number | null {
  const plain = plainNumber(text, decimal);
  // `1e999` has the form of a number, and is none that can be reckoned with.
  return plain === null || !Number.isFinite(Number(plain)) ? null : Number(plain);
}

/** A number with the digits that were typed, a decimal point and nothing between thousands; null where the text is none. */
export function plainNumber(text: string, decimal: DecimalSign): string | null {
  const { plain, grouped } = patterns[decimal];
  if (plain.test(text)) return text.replace(',', '.');
  if (!grouped.test(text)) return null;
  const digits = [...text].filter((sign) => sign === decimal || /[\d+-]/.test(sign)).join('');
  return digits.replace(',', '.');
}

/** Whether thousands are grouped by the sign that is not the decimal one. */
export function isGroupedWith(text: string, decimal: DecimalSign): boolean {
  return text.includes(decimal === '.' ? ',' : '.');
}
