import type { FittedRequest } from '../../knowledge/pairing.ts';
import type { DegreesCelsius, Grams } from '../../units/canonical.ts';

/** What is to be planned. */
export interface PlanRequest extends FittedRequest {
  /** Bench method; the flow ladder unless given. */
  readonly method?: string;
  /** Nozzle temperature to run at; by default that of the claim to be tested, else the middle of the window. */
  readonly nozzleTemperature?: DegreesCelsius;
  /** Step of the scale; 0.01 g unless given. */
  readonly resolution?: Grams;
  /** Setting that a settingLadder raises, or part of the machine that a setPointCheck checks. */
  readonly subject?: string;
  /** Day of the plan, YYYY-MM-DD. */
  readonly today: string;
}
