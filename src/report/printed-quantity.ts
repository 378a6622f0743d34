import { type Dimension, dimensionInfo } from '../units/dimension.ts';
import { formatNumber, toUnit } from '../units/format-quantity.ts';
import { printedUnit } from '../units/print-symbols.ts';

/** The unit in which figures show a dimension, as printed: the one that people of the trade write. */
export function figureUnit(dimension: Dimension): string {
  return printedUnit(dimensionInfo[dimension].usualUnit);
}

/** A number in the canonical unit of its dimension → the number in the unit in which figures show it. */
export function figureNumber(value: number, dimension: Dimension): number {
  return toUnit(value, dimension, dimensionInfo[dimension].usualUnit);
}

/** `44.9 mm³/s`, to three significant digits. */
export function figureQuantity(value: number, dimension: Dimension): string {
  const number = formatNumber(figureNumber(value, dimension), { significantDigits: 3 });
  return `${number} ${figureUnit(dimension)}`.trimEnd();
}

/** `44.9 mm³/s, 95 % interval 44.1 to 45.5 mm³/s`, all with the decimals that give the value three digits. */
export function figureInterval(value: number, low: number, high: number, dimension: Dimension): string {
  const size = Math.abs(figureNumber(value, dimension));
  const decimals = size > 0 ? Math.min(Math.max(2 - Math.floor(Math.log10(size)), 0), 12) : 2;
  const [middle, least, most] = [value, low, high].map((number) =>
    formatNumber(figureNumber(number, dimension), { decimals }),
  );
  const unit = figureUnit(dimension);
  return `${middle} ${unit}, 95 % interval ${least} to ${most} ${unit}`;
}

/** `commanded flow` for `commandedFlow`. */
export function inWords(camelCase: string): string {
  return camelCase.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
