import type { Millimetres, Range } from '../../units/canonical.ts';

/** Layer height and line width over the bore of the nozzle (common practice, no source). */
export const beadOverBore: Readonly<Record<'layerHeight' | 'lineWidth', Range>> = {
  layerHeight: { low: 0.1, high: 1 },
  lineWidth: { low: 0.6, high: 2.5 },
};

/** The layer heights or line widths, mm, that a nozzle can lay. */
export function beadBounds(part: keyof typeof beadOverBore, bore: Millimetres): Range {
  const { low, high } = beadOverBore[part];
  return { low: low * bore, high: high * bore };
}

/** Whether a nozzle can lay it; a hair wider than the bounds, since they are products of decimals. */
export function isBeadUsual(part: keyof typeof beadOverBore, value: Millimetres, bore: Millimetres): boolean {
  const { low, high } = beadBounds(part, bore);
  return value >= low - 1e-9 && value <= high + 1e-9;
}
