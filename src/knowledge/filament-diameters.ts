import type { Millimetres } from '../units/canonical.ts';

/** Diameters that a filament can have at all; further out the figure itself is judged (common practice, no source). */
const filaments = { low: 1, high: 4 };

export function isFilamentDiameter(diameter: Millimetres): boolean {
  return diameter >= filaments.low && diameter <= filaments.high;
}

/** Fastest feed that drives push, in mm/s: twice the highest feed published; drives lose their grip on the way there (common practice, no source). */
export const fastestFeed = 60;
