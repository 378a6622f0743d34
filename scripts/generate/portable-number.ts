import { mostSignificantDigits } from '../../src/units/number-form.ts';

const mostDecimals = 22;

/** Digits behind the first one, with at most so many in all, and a point before any of them. */
function furtherDigits(most: number): string {
  return most === 0 ? '' : `(?:\\.[0-9]{1,${most}}|[0-9]${furtherDigits(most - 1)})?`;
}

/** At most so many decimals of a number below one, of which those behind the leading zeros are significant. */
function decimals(most: number): string {
  const digits = mostSignificantDigits;
  if (most === digits) return `[0-9]{1,${digits}}`;
  return `(?:[1-9][0-9]{0,${digits - 1}}|0(?:${decimals(most - 1)})?)`;
}

/**
 * The numbers that `numberPattern` takes, by a pattern that looks neither ahead nor back, as engines that match in
 * linear time need it. It is longer and takes three times as long to compile, so the program keeps the other one.
 */
export const portableNumberPattern = `-?(?:0(?:\\.${decimals(mostDecimals)})?|[1-9]${furtherDigits(mostSignificantDigits - 1)})(?:[eE][+-]?[0-9]{1,2})?`;
