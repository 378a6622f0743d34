import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import type { Statement } from '../../../registry/generated/documents.ts';
import { chooseStatement } from '../../../registry/statement.ts';
import type { DegreesCelsius, Range } from '../../../units/canonical.ts';

/** The nozzle temperatures at which a filament is to be printed; null where none are stated. */
export function nozzleWindow(pairing: Pairing): Statement<Range> | null {
  return chooseStatement(pairing.filament.data.nozzleTemperature, conditionsOf(pairing));
}

/** The limit of the hot end; null where none is stated. */
export function hotEndLimit(pairing: Pairing): Statement<number> | null {
  return chooseStatement(pairing.hotEnd.temperatureLimit, conditionsOf(pairing));
}

/** The most that a hot end may be set to: its limit less the margin of the policy; infinite where none is known. */
export function hottestSetting(pairing: Pairing): DegreesCelsius {
  const limit = hotEndLimit(pairing)?.value ?? Number.POSITIVE_INFINITY;
  return limit - (pairing.policy.data.hotEndMargin ?? 0);
}
