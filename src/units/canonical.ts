import type { Dimension } from './dimension.ts';

/**
 * Names for plain numbers in canonical units. They carry no check of their own: they say in a signature
 * which unit a number is in.
 */

/** Length in mm. */
export type Millimetres = number;
/** Area in mm². */
export type SquareMillimetres = number;
/** Volume in mm³. */
export type CubicMillimetres = number;
/** Time in s. */
export type Seconds = number;
/** Mass in g. */
export type Grams = number;
/** A number of things. */
export type Count = number;
/** A ratio: 1 is 100 %. */
export type Fraction = number;
/** Plane angle in degrees. */
export type Degrees = number;
/** A temperature in °C. */
export type DegreesCelsius = number;
/** A difference of temperatures in K. */
export type Kelvins = number;
/** Speed in mm/s. */
export type MillimetresPerSecond = number;
/** Acceleration in mm/s². */
export type MillimetresPerSecondSquared = number;
/** Volume flow in mm³/s. */
export type CubicMillimetresPerSecond = number;
/** Density in g/mm³. */
export type GramsPerCubicMillimetre = number;
/** Specific heat in J/(g·K). */
export type JoulesPerGramKelvin = number;
/** Energy per mass in J/g. */
export type JoulesPerGram = number;
/** Thermal conductivity in W/(mm·K). */
export type WattsPerMillimetreKelvin = number;
/** Thermal diffusivity in mm²/s; calculated, never written. */
export type SquareMillimetresPerSecond = number;
/** Power in W. */
export type Watts = number;
/** Force in N. */
export type Newtons = number;
/** Pressure in MPa. */
export type Megapascals = number;
/** Dynamic viscosity in MPa·s: 1000 Pa·s is 0.001 MPa·s. */
export type MegapascalSeconds = number;
/** Frequency in Hz. */
export type Hertz = number;
/** Sound pressure level in dB re 20 µPa; its weighting is the written unit's. */
export type Decibels = number;

/** Both ends in the canonical unit of their dimension, low ≤ high. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** An amount in its own currency (ISO 4217 code); never converted. */
export interface Money {
  readonly amount: number;
  readonly currency: string;
}

/** Which of these types holds a canonical value of a dimension. */
export const canonicalTypeName: Readonly<Record<Dimension, string>> = {
  length: 'Millimetres',
  area: 'SquareMillimetres',
  volume: 'CubicMillimetres',
  time: 'Seconds',
  mass: 'Grams',
  count: 'Count',
  ratio: 'Fraction',
  angle: 'Degrees',
  temperature: 'DegreesCelsius',
  temperatureDifference: 'Kelvins',
  speed: 'MillimetresPerSecond',
  acceleration: 'MillimetresPerSecondSquared',
  volumeFlow: 'CubicMillimetresPerSecond',
  density: 'GramsPerCubicMillimetre',
  specificHeat: 'JoulesPerGramKelvin',
  specificEnergy: 'JoulesPerGram',
  thermalConductivity: 'WattsPerMillimetreKelvin',
  power: 'Watts',
  force: 'Newtons',
  pressure: 'Megapascals',
  viscosity: 'MegapascalSeconds',
  frequency: 'Hertz',
  soundLevel: 'Decibels',
  money: 'Money',
};
