import type { Unit } from './unit-table.ts';

/**
 * Temperatures are rounded to 1e-10 after a shift: 300 K - 273.15 K is 26.850000000000023 in doubles, and the
 * tail is the subtraction's, not the thermometer's.
 */
function withoutShiftNoise(value: number): number {
  return Number(value.toFixed(10));
}

/** A value in a unit → the same in the canonical unit of its dimension. */
export function toCanonical(value: number, unit: Unit): number {
  const scaled = (value * unit.multiplier) / unit.divisor;
  return unit.offset === 0 ? scaled : withoutShiftNoise(scaled + unit.offset);
}

/** A value in the canonical unit of a dimension → the same in a unit of that dimension. */
export function fromCanonical(value: number, unit: Unit): number {
  if (unit.offset === 0) return (value * unit.divisor) / unit.multiplier;
  return withoutShiftNoise(((value - unit.offset) * unit.divisor) / unit.multiplier);
}
