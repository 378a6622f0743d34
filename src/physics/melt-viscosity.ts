import type { DegreesCelsius } from '../units/canonical.ts';

/** Universal constants of the equation, the second in K. */
const universal = { c1: 17.44, c2: 51.6 };

/**
 * How many times as viscous an amorphous melt is at one temperature as at another; Infinity at the glass transition and
 * below, where nothing flows. All in °C. Beyond 100 K above the glass transition the equation is extrapolated.
 * Source: Williams, Landel & Ferry, J. Am. Chem. Soc. 77 (1955) 3701-3707, with its universal constants (from memory):
 * lg a = -17.44 (T - Tg)/(51.6 K + T - Tg).
 */
export function viscosityRatio(
  temperature: DegreesCelsius,
  reference: DegreesCelsius,
  glassTransition: DegreesCelsius,
): number {
  if (temperature <= glassTransition) return Number.POSITIVE_INFINITY;
  return 10 ** (shift(temperature - glassTransition) - shift(reference - glassTransition));
}

/** Logarithm of the shift factor at so many K above the glass transition. */
function shift(above: number): number {
  return (-universal.c1 * above) / (universal.c2 + above);
}
