import { familiesOf } from '../../knowledge/families.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import { nozzleWindow } from '../../prediction/nozzle-window.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Result, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import type { PlanRequest } from './plan-request.ts';
import { planTemperature } from './plan-temperature.ts';

/** The nozzle temperature of a run, as a line of its trial and in words. */
export interface PlannedCondition {
  readonly line: string;
  readonly setting: string;
}

/** Inside of what is allowed; the error says what leaves nothing. */
export function plannedCondition(
  registry: Registry,
  pairing: FittedPairing,
  request: PlanRequest,
): Result<PlannedCondition, string> {
  const window = nozzleWindow(pairing, familiesOf(pairing.filament.data, registry));
  if (!window.ok) return window;
  const temperature = planTemperature(pairing, window.value, request.nozzleTemperature);
  if (!temperature.ok) return temperature;
  const text = shown(temperature.value.value, 'temperature');
  return success({
    line: `nozzleTemperature: ${text}`,
    setting: `nozzle at ${text}: ${temperature.value.reason}`,
  });
}
