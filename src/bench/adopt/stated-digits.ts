import type { Range } from '../../units/canonical.ts';

/** Digits that a bench limit is worth stating. */
const digits = 3;

/** Largest relative difference that rounding to the stated digits can make. */
export const statedRounding = 10 ** (1 - digits);

/** A limit rounded down to three digits: the safe side for a flow. */
export function roundedDown(value: number): number {
  return Math.floor(value / step(value) + 1e-9) * step(value);
}

/** A limit rounded up to three digits: the safe side for a time that must pass. */
export function roundedUp(value: number): number {
  return Math.ceil(value / step(value) - 1e-9) * step(value);
}

/** An interval rounded outward to three digits. */
export function roundedOutward(low: number, high: number): Range {
  return { low: roundedDown(low), high: roundedUp(high) };
}

function step(value: number): number {
  return value === 0 ? 1 : 10 ** (Math.floor(Math.log10(Math.abs(value))) - digits + 1);
}
