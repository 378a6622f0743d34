import type { Range } from '../units/canonical.ts';

/** The middle of a range. */
export function middle({ low, high }: Range): number {
  return (low + high) / 2;
}

/** The median of some values: the middle one, or half-way between the two in the middle; null of none. */
export function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const [low, high] = [sorted[Math.ceil(sorted.length / 2) - 1], sorted[Math.floor(sorted.length / 2)]];
  return low === undefined || high === undefined ? null : middle({ low, high });
}
