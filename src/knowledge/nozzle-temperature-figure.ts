import { conditionBands } from '../registry/generated/key-facts.ts';
import type { DegreesCelsius } from '../units/canonical.ts';
import { isImpossible } from './figure-outside.ts';

/**
 * Whether a nozzle temperature is one that a machine can have at all. Others are found as figures; judged by
 * polymers, hot ends and liners they would be found again.
 */
export function isNozzleTemperature(value: DegreesCelsius): boolean {
  return !isImpossible(value, conditionBands.nozzleTemperature);
}
