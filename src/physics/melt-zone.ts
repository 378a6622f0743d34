import type {
  CubicMillimetresPerSecond,
  DegreesCelsius,
  GramsPerCubicMillimetre,
  JoulesPerGramKelvin,
  Millimetres,
  WattsPerMillimetreKelvin,
} from '../units/canonical.ts';
import { cylinderCentreTheta, cylinderMeanTheta, fourierForCentreTheta } from './cylinder-conduction.ts';

/** Thermal diffusivity in mm²/s. */
export type SquareMillimetresPerSecond = number;

/**
 * The filament in a hot end as plug flow of a solid cylinder through a tube at one wall temperature.
 * The melt only touches part of the heated length at high speed (Kattinger et al., Analysis of melting and flow in the
 * hot-end, Additive Manufacturing 76 (2023) 103762), so these figures are upper bounds for a plain tube.
 */
export interface MeltZone {
  readonly wallTemperature: DegreesCelsius;
  /** Temperature at which the filament enters. */
  readonly entryTemperature: DegreesCelsius;
  readonly diffusivity: SquareMillimetresPerSecond;
  readonly heatedLength: Millimetres;
}

/** Thermal diffusivity a = k/(rho cp), in mm²/s. Source: Incropera et al., Fundamentals of Heat and Mass Transfer, section 2.2. */
export function thermalDiffusivity(
  conductivity: WattsPerMillimetreKelvin,
  density: GramsPerCubicMillimetre,
  specificHeat: JoulesPerGramKelvin,
): SquareMillimetresPerSecond {
  return conductivity / (density * specificHeat);
}

/**
 * Fourier number of a filament on leaving the heated length: a t/R^2 with t = L pi R^2/Q gives pi a L/Q, whatever the diameter.
 * Source: derived from the series of Incropera et al., section 5.6; the same group as in Mackay et al., The performance of
 * the hot end in a plasticating 3D printer, J. Rheology 61 (2017) 229-236.
 */
export function residenceFourier(
  diffusivity: SquareMillimetresPerSecond,
  heatedLength: Millimetres,
  flow: CubicMillimetresPerSecond,
): number {
  return (Math.PI * diffusivity * heatedLength) / flow;
}

/** Flow, in mm³/s, at which a filament leaves the heated length with a Fourier number: Q = pi a L/Fo. Source: as `residenceFourier`. */
export function flowAtResidenceFourier(
  diffusivity: SquareMillimetresPerSecond,
  heatedLength: Millimetres,
  fourier: number,
): CubicMillimetresPerSecond {
  return (Math.PI * diffusivity * heatedLength) / fourier;
}

/**
 * Highest flow, in mm³/s, at which the core leaves with no more than `theta` of the step still to go
 * (0 = at wall temperature, 1 = as it entered). Source: as `residenceFourier`.
 */
export function flowAtCoreTheta(
  diffusivity: SquareMillimetresPerSecond,
  heatedLength: Millimetres,
  theta: number,
): CubicMillimetresPerSecond {
  return flowAtResidenceFourier(diffusivity, heatedLength, fourierForCentreTheta(theta));
}

/** Highest flow, in mm³/s, at which the core leaves at no less than a temperature between entry and wall. Source: as `residenceFourier`. */
export function flowAtCoreTemperature(
  zone: MeltZone,
  coreTemperature: DegreesCelsius,
): CubicMillimetresPerSecond {
  const theta = (coreTemperature - zone.wallTemperature) / (zone.entryTemperature - zone.wallTemperature);
  return flowAtCoreTheta(zone.diffusivity, zone.heatedLength, theta);
}

/** Temperature of the axis of the filament on leaving the heated length at a flow. Source: as `residenceFourier`. */
export function coreTemperatureAtFlow(zone: MeltZone, flow: CubicMillimetresPerSecond): DegreesCelsius {
  return temperatureAtTheta(zone, cylinderCentreTheta(fourierOf(zone, flow)));
}

/** Mean temperature over the cross-section of the filament on leaving the heated length at a flow. Source: as `residenceFourier`. */
export function meanTemperatureAtFlow(zone: MeltZone, flow: CubicMillimetresPerSecond): DegreesCelsius {
  return temperatureAtTheta(zone, cylinderMeanTheta(fourierOf(zone, flow)));
}

function fourierOf(zone: MeltZone, flow: CubicMillimetresPerSecond): number {
  return residenceFourier(zone.diffusivity, zone.heatedLength, flow);
}

function temperatureAtTheta(zone: MeltZone, theta: number): DegreesCelsius {
  return zone.wallTemperature + theta * (zone.entryTemperature - zone.wallTemperature);
}
