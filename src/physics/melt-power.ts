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

/** The heat that a polymer takes up on its way through its glass transition or its melting. */
export interface TransitionHeat {
  readonly solid: JoulesPerGramKelvin;
  readonly melt: JoulesPerGramKelvin;
  /** Glass transition of an amorphous polymer, melting of a semi-crystalline one. */
  readonly transition: DegreesCelsius;
  /** What the crystals take up in melting, per g of polymer: 0 for an amorphous one. */
  readonly fusion: JoulesPerGram;
}

/**
 * Mean specific heat, in J/(g K), between two temperatures of which the first lies below the transition and the second
 * above: the difference of enthalpy, over that of temperature. Source: definition of the specific heat.
 */
export function meanSpecificHeat(
  { solid, melt, transition, fusion }: TransitionHeat,
  from: DegreesCelsius,
  to: DegreesCelsius,
): JoulesPerGramKelvin {
  return (solid * (transition - from) + fusion + melt * (to - transition)) / (to - from);
}
