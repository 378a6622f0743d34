import { fromCanonical } from './convert-unit.ts';
import { type Dimension, dimensionInfo } from './dimension.ts';
import { isNumber, mostSignificantDigits } from './number-form.ts';
import { requireUnit, type Unit } from './unit-table.ts';

/** How a quantity is written. */
export interface QuantityFormat {
  /** UCUM (or ISO 4217) code of the unit to write; the canonical unit when absent. Money has to name it. */
  readonly unit?: string;
  /** Round to so many significant digits (1 to 15), without trailing zeros. */
  readonly significantDigits?: number;
  /** Write exactly so many decimals (0 to 15), trailing zeros kept; takes precedence over significant digits. */
  readonly decimals?: number;
}

/** A value in the canonical unit of a dimension → the number in another unit of it. Throws on a foreign code. */
export function toUnit(value: number, dimension: Dimension, unitCode: string): number {
  const converted = fromCanonical(value, requireUnit(unitCode, dimension));
  return Number(converted.toPrecision(mostSignificantDigits));
}

/**
 * Writes a value given in the canonical unit of its dimension, as `parseQuantity` reads it: `75 mm3/s`.
 * Unrounded it keeps 15 significant digits. The same bytes on every machine. Throws on a value that is not finite
 * or beyond 1e99.
 */
export function formatQuantity(value: number, dimension: Dimension, options: QuantityFormat = {}): string {
  const unit = unitFor(dimension, options);
  return `${formatNumber(fromCanonical(value, unit), options)} ${unit.code}`;
}

/** Writes a range given in the canonical unit, as `parseRange` reads it: `20..75 mm3/s`. */
export function formatRange(
  low: number,
  high: number,
  dimension: Dimension,
  options: QuantityFormat = {},
): string {
  const unit = unitFor(dimension, options);
  const [first, last] = [low, high].map((end) => formatNumber(fromCanonical(end, unit), options));
  return `${first}..${last} ${unit.code}`;
}

function unitFor(dimension: Dimension, options: QuantityFormat): Unit {
  const code = options.unit ?? dimensionInfo[dimension].canonicalUnit;
  if (code === undefined)
    throw new RangeError(`a ${dimensionInfo[dimension].description} needs its currency`);
  return requireUnit(code, dimension);
}

/** Below this a number is written as 0: its exponent would not be read back, and nothing here is so small. */
const smallest = 1e-90;

/** A number in the form that is read back, with a point as decimal sign and no grouping. */
export function formatNumber(value: number, options: Omit<QuantityFormat, 'unit'> = {}): string {
  const { significantDigits = mostSignificantDigits, decimals } = options;
  const fixed = decimals === undefined ? undefined : value.toFixed(decimals);
  const text = fixed !== undefined && isNumber(fixed) ? fixed : shortest(value, significantDigits);
  if (!isNumber(text)) throw new RangeError(`${value} cannot be written as a quantity`);
  return /^-[0.]+$/.test(text) ? text.slice(1) : text;
}

function shortest(value: number, significantDigits: number): string {
  if (Math.abs(value) < smallest) return '0';
  const rounded = Number(value.toPrecision(significantDigits));
  const plain = String(rounded);
  return isNumber(plain) ? plain : rounded.toExponential();
}
