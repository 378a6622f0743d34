import { shown } from '../../units/wording.ts';
import type { PlannedTemperature } from './layout-request.ts';

/** The nozzle temperature of a run, as a line of its trial and in words. */
interface NozzleCondition {
  readonly line: string;
  readonly setting: string;
}

export function nozzleCondition({ value, reason }: PlannedTemperature): NozzleCondition {
  const text = shown(value, 'temperature');
  return { line: `nozzleTemperature: ${text}`, setting: `nozzle at ${text}: ${reason}` };
}
