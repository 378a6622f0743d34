import type { Range } from '../../units/canonical.ts';
import type { AdoptableLimit } from './adoptable-limit.ts';

/** Digits that a bench limit is worth stating. */
const digits = 3;

/** Largest relative difference that rounding to the stated digits can make. */
export const statedRounding = 10 ** (1 - digits);

/** A limit rounded to three digits, to its safe side; to the nearest where neither side is. */
export function roundedSafely(value: number, { safeSide }: Pick<AdoptableLimit, 'safeSide'>): number {
  if (safeSide === 'inside') return Math.round(value / step(value)) * step(value);
  return safeSide === 'below' ? roundedDown(value) : roundedUp(value);
}

/** A limit rounded down to three digits: the safe side for a flow. */
function roundedDown(value: number): number {
  return Math.floor(value / step(value) + 1e-9) * step(value);
}

/** A limit rounded up to three digits: the safe side for a time that must pass. */
function roundedUp(value: number): number {
  return Math.ceil(value / step(value) - 1e-9) * step(value);
}

/** An interval rounded outward to three digits. */
export function roundedOutward(low: number, high: number): Range {
  return { low: roundedDown(low), high: roundedUp(high) };
}

function step(value: number): number {
  return value === 0 ? 1 : 10 ** (Math.floor(Math.log10(Math.abs(value))) - digits + 1);
}
