import type { Millimetres } from '../units/canonical.ts';

/** Diameters that a filament can have at all; further out the figure itself is judged (common practice, no source). */
const filaments = { low: 1, high: 4 };

export function isFilamentDiameter(diameter: Millimetres): boolean {
  return diameter >= filaments.low && diameter <= filaments.high;
}

/** The diameters that filament is sold in. */
export const nominalDiameters: readonly Millimetres[] = [1.75, 2.85, 3];
/** Between two filaments of 1.75 mm at the ends of the widest tolerance. */
const nominalAllowance: Millimetres = 0.1;

/** Whether a diameter is about one that filament is sold in. */
export function isNearNominal(diameter: Millimetres): boolean {
  return nominalDiameters.some((nominal) => Math.abs(diameter - nominal) <= nominalAllowance);
}

/** Half of the step between the thinnest and the next nominal diameters is more; two filaments of one nominal are nearer. */
const fitAllowance: Millimetres = 0.2;

/** Whether a filament goes into a hot end made for another diameter or the same. */
export function fitsHotEnd(filament: Millimetres, hotEnd: Millimetres): boolean {
  return Math.abs(hotEnd - filament) <= fitAllowance;
}

/** Fastest feed that drives push, in mm/s: twice the highest feed published; drives lose their grip on the way there (common practice, no source). */
export const fastestFeed = 60;

/** A nominal diameter in mm, as names and titles write it: `2.85`, `3,0`. */
const written = /(?<![\d.,])(1[.,]75|2[.,]85|3[.,]00?)(?!\d|[.,]\d)/g;

/** The nominal diameters of filaments that a text mentions. */
export function diametersIn(text: string): readonly Millimetres[] {
  return [...text.matchAll(written)].map(([, number = '']) => Number(number.replace(',', '.')));
}
