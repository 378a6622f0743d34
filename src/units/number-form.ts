/** Spaces between the parts of a quantity: the plain one and the no-break and thin ones of pasted text. */
export const spaces = ' \u00a0\u2009\u202f';

/** More digits than this say a division was pasted; fifteen also survive the way into a double and back. */
export const mostSignificantDigits = 15;

const tooManyDigits = `-?(?:0\\.0*)?[1-9](?:\\.?[0-9]){${mostSignificantDigits}}`;

/**
 * Pattern source of a number: digits with a decimal point, at most 15 of them significant, at most 22 after the
 * point, an exponent of at most two digits. Each of its parts is bounded, so matching takes constant time.
 */
export const numberPattern = `(?!${tooManyDigits})-?(?:0|[1-9][0-9]{0,14})(?:\\.[0-9]{1,22})?(?:[eE][+-]?[0-9]{1,2})?`;

const numberAtStart = new RegExp(`^${numberPattern}`);
const wholeNumber = new RegExp(`^${numberPattern}$`);

/** The well-formed number that a text begins with, and what follows it. */
export function readNumber(text: string): { readonly number: string; readonly rest: string } | undefined {
  const number = numberAtStart.exec(text)?.[0];
  return number === undefined ? undefined : { number, rest: text.slice(number.length) };
}

export function isNumber(text: string): boolean {
  return wholeNumber.test(text);
}

/** Takes the spaces off both ends. `String.trim` takes line ends too, which a quantity must not hold. */
export function trimSpaces(text: string): string {
  let start = 0;
  let end = text.length;
  while (start < end && spaces.includes(text.charAt(start))) start += 1;
  while (end > start && spaces.includes(text.charAt(end - 1))) end -= 1;
  return text.slice(start, end);
}
