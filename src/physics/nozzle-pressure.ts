import type {
  CubicMillimetresPerSecond,
  Degrees,
  MegapascalSeconds,
  Megapascals,
  Millimetres,
  Newtons,
} from '../units/canonical.ts';
import { filamentArea } from './filament-geometry.ts';

/**
 * Pressure drop, in MPa, of a Newtonian melt through a round channel: 8 eta L Q/(pi R^4).
 * Source: Hagen-Poiseuille law, for example Bird, Stewart & Lightfoot, Transport Phenomena, section 2.3 (from memory).
 */
export function channelPressureDrop(
  viscosity: MegapascalSeconds,
  length: Millimetres,
  radius: Millimetres,
  flow: CubicMillimetresPerSecond,
): Megapascals {
  return (8 * viscosity * length * flow) / (Math.PI * radius ** 4);
}

/** Flow, in mm³/s, that a pressure (MPa) drives through a round channel: pi R^4 p/(8 eta L). Source: as `channelPressureDrop`. */
export function channelFlow(
  viscosity: MegapascalSeconds,
  length: Millimetres,
  radius: Millimetres,
  pressure: Megapascals,
): CubicMillimetresPerSecond {
  return (Math.PI * radius ** 4 * pressure) / (8 * viscosity * length);
}

/**
 * Pressure drop, in MPa, of a Newtonian melt through a cone from a wide to a narrow radius:
 * 8 eta Q/(3 pi tan b) (1/r^3 - 1/R^3), with b the half-angle in degrees.
 * Source: Hagen-Poiseuille law integrated along the cone (lubrication approximation).
 */
export function conePressureDrop(
  viscosity: MegapascalSeconds,
  radii: { readonly wide: Millimetres; readonly narrow: Millimetres },
  halfAngle: Degrees,
  flow: CubicMillimetresPerSecond,
): Megapascals {
  const slope = Math.tan((halfAngle * Math.PI) / 180);
  return ((8 * viscosity * flow) / (3 * Math.PI * slope)) * (radii.narrow ** -3 - radii.wide ** -3);
}

/** Shear rate, in 1/s, of a Newtonian melt at the wall of a round channel: 4Q/(pi R^3). Source: as `channelPressureDrop`. */
export function wallShearRate(flow: CubicMillimetresPerSecond, radius: Millimetres): number {
  return (4 * flow) / (Math.PI * radius ** 3);
}

/** Force, in N, that a filament needs to hold a pressure (MPa) in the melt: F = p pi d^2/4. Source: definition of pressure. */
export function pushingForce(pressure: Megapascals, diameter: Millimetres): Newtons {
  return pressure * filamentArea(diameter);
}

/**
 * Axial pressure, in MPa, at which a free length of filament buckles between drive and hot end: pi^2 E d^2/(16 L^2).
 * Source: Euler's column with pinned ends divided by its area; used so in Turner, Strong & Gold, A review of melt
 * extrusion additive manufacturing processes I, Rapid Prototyping J. 20 (2014) 192-204 (from memory).
 */
export function bucklingPressure(
  modulus: Megapascals,
  diameter: Millimetres,
  freeLength: Millimetres,
): Megapascals {
  return (Math.PI ** 2 * modulus * diameter ** 2) / (16 * freeLength ** 2);
}
