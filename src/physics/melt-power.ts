import type {
  CubicMillimetresPerSecond,
  DegreesCelsius,
  Fraction,
  GramsPerCubicMillimetre,
  JoulesPerGram,
  JoulesPerGramKelvin,
  Watts,
} from '../units/canonical.ts';

/** What it takes to bring a feedstock from room to nozzle temperature. */
export interface Heating {
  readonly density: GramsPerCubicMillimetre;
  /** Mean specific heat between the two temperatures. */
  readonly specificHeat: JoulesPerGramKelvin;
  readonly nozzleTemperature: DegreesCelsius;
  readonly ambientTemperature: DegreesCelsius;
  /** Mass fraction of crystal in the feedstock, 0 for an amorphous one. */
  readonly crystallinity: Fraction;
  /** Heat of fusion of the pure crystal. */
  readonly heatOfFusion: JoulesPerGram;
}

/** Heat, in J, that a cubic millimetre of feedstock takes up: rho [cp (Tn - Ta) + x Hf]. Source: as `meltPower`. */
export function heatPerVolume(heating: Heating): number {
  const rise = heating.nozzleTemperature - heating.ambientTemperature;
  return heating.density * (heating.specificHeat * rise + heating.crystallinity * heating.heatOfFusion);
}

/**
 * Power, in W, that a volume flow of feedstock (mm³/s) takes up: P = rho Q [cp (Tn - Ta) + x Hf]. Losses to the room come on top.
 * Source: steady energy balance of an open system, Incropera et al., Fundamentals of Heat and Mass Transfer, section 1.3.
 */
export function meltPower(heating: Heating, flow: CubicMillimetresPerSecond): Watts {
  return heatPerVolume(heating) * flow;
}
