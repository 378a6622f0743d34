import type { Range } from './canonical.ts';
import { type Dimension, dimensionInfo } from './dimension.ts';
import { formatNumber, formatQuantity, formatRange } from './format-quantity.ts';

/** Digits that a message needs to be checked by hand. */
const digits = 4;

/** A value in the canonical unit of its dimension, as people of the trade write it: `1.24 g/cm3`. */
export function shown(value: number, dimension: Dimension): string {
  return formatQuantity(value, dimension, formatOf(dimension));
}

/** A range in the canonical unit of its dimension, as people of the trade write it: `190..235 Cel`. */
export function shownRange({ low, high }: Range, dimension: Dimension): string {
  return formatRange(low, high, dimension, formatOf(dimension));
}

/** A pure number with the digits that a message needs. */
export function shownNumber(value: number): string {
  return formatNumber(value, { significantDigits: digits });
}

function formatOf(dimension: Dimension): { unit: string; significantDigits: number } {
  return { unit: dimensionInfo[dimension].usualUnit, significantDigits: digits };
}

/** A length in mm as jobs write the lengths of their paths: in metres. */
export function metres(length: number): string {
  return `${shown(length / 1000, 'length').replace(/ mm$/, '')} m`;
}
