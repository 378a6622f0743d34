import type {
  CubicMillimetresPerSecond,
  Grams,
  GramsPerCubicMillimetre,
  Millimetres,
  MillimetresPerSecond,
  Seconds,
  SquareMillimetres,
} from '../units/canonical.ts';

/** Cross-section of a round filament, in mm²: A = pi d^2/4. Source: plane geometry. */
export function filamentArea(diameter: Millimetres): SquareMillimetres {
  return (Math.PI * diameter ** 2) / 4;
}

/** Speed, in mm/s, at which filament enters the hot end at a volume flow: v = 4Q/(pi d^2). Source: continuity. */
export function filamentFeed(flow: CubicMillimetresPerSecond, diameter: Millimetres): MillimetresPerSecond {
  return flow / filamentArea(diameter);
}

/** Volume flow, in mm³/s, that a filament fed at a speed gives: Q = v pi d^2/4. Source: continuity. */
export function flowOfFeed(feed: MillimetresPerSecond, diameter: Millimetres): CubicMillimetresPerSecond {
  return feed * filamentArea(diameter);
}

/** Length, in mm, of a mass of filament: l = m/(rho A). Source: definition of density. */
export function filamentLength(
  mass: Grams,
  density: GramsPerCubicMillimetre,
  diameter: Millimetres,
): Millimetres {
  return mass / (density * filamentArea(diameter));
}

/** Mass, in g, of a length of filament: m = rho A l. Source: definition of density. */
export function filamentMass(
  length: Millimetres,
  density: GramsPerCubicMillimetre,
  diameter: Millimetres,
): Grams {
  return length * density * filamentArea(diameter);
}

/** Time, in s, that a mass of feedstock lasts at a steady volume flow: t = m/(rho Q). Source: mass balance. */
export function spoolDuration(
  mass: Grams,
  density: GramsPerCubicMillimetre,
  flow: CubicMillimetresPerSecond,
): Seconds {
  return mass / (density * flow);
}
