import { type Dimension, dimensionInfo } from '../../units/dimension.ts';
import { formatNumber, toUnit } from '../../units/format-quantity.ts';
import { printedUnit } from '../../units/print-symbols.ts';

/** A dimension with the unit in which a figure shows it. */
export interface FigureScale {
  readonly dimension: Dimension;
  /** UCUM code. */
  readonly unit: string;
}

/** Units for large numbers, largest first: from how many canonical units on, and the code. */
const largeUnits: Readonly<Partial<Record<Dimension, readonly (readonly [from: number, code: string])[]>>> = {
  time: [
    [2 * 3600, 'h'],
    [10 * 60, 'min'],
  ],
  length: [[1000, 'm']],
};

/** The unit in which a figure shows numbers up to `largest` (canonical): the usual one of the trade, or a larger one. */
export function figureScale(dimension: Dimension, largest = 0): FigureScale {
  const large = largeUnits[dimension]?.find(([from]) => largest >= from);
  return { dimension, unit: large?.[1] ?? dimensionInfo[dimension].usualUnit };
}

/** The unit as printed. */
export function figureUnit({ unit }: FigureScale): string {
  return printedUnit(unit);
}

/** A number in the canonical unit of its dimension → the number that the figure shows. */
export function figureNumber(value: number, { dimension, unit }: FigureScale): number {
  return toUnit(value, dimension, unit);
}

/** `44.9 mm³/s`, to three significant digits or, where a `span` is given, to a hundredth of it (canonical unit). */
export function figureQuantity(value: number, scale: FigureScale, span?: number): string {
  const number = figureNumber(value, scale);
  const decimals = span === undefined ? decimalsOf(number, 3) : decimalsOf(figureNumber(span, scale), 3);
  return `${Number(formatNumber(number, { decimals }))} ${figureUnit(scale)}`.trimEnd();
}

/** `44.9 mm³/s, 95 % interval 44.1 to 45.5 mm³/s`, all with the decimals that give the value three digits. */
export function figureInterval(value: number, low: number, high: number, scale: FigureScale): string {
  const decimals = decimalsOf(figureNumber(value, scale), 3);
  const [middle, least, most] = [value, low, high].map((number) =>
    formatNumber(figureNumber(number, scale), { decimals }),
  );
  const unit = figureUnit(scale);
  return `${middle} ${unit}, 95 % interval ${least} to ${most} ${unit}`;
}

/** The decimals with which a number shows so many significant digits. */
function decimalsOf(number: number, digits: number): number {
  const size = Math.abs(number);
  return size > 0 ? Math.min(Math.max(digits - 1 - Math.floor(Math.log10(size)), 0), 12) : digits - 1;
}
