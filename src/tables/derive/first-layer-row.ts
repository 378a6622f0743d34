import { conditionsOf, type Pairing } from '../../knowledge/pairing.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { roundDown } from '../../units/round-to-step.ts';
import type { BareCondition } from './condition-row.ts';
import { hotEndLimit, hottestSetting, nozzleWindow } from './nozzle-settings.ts';
import { sourcedStatement } from './sourced-value.ts';

/**
 * Nozzle temperature of the first layer: as stated, inside of the window of the filament, and never above what the hot
 * end may be set to; nothing where none is stated.
 */
export function firstLayerRow(pairing: Pairing): BareCondition[] {
  const { filament, machine, policy } = pairing;
  const stated = chooseStatement(filament.data.firstLayerNozzleTemperature, conditionsOf(pairing));
  if (stated === null) return [];
  const ground = sourcedStatement(filament, stated);
  const base = { name: 'firstLayerNozzleTemperature', flow: null, unit: 'Cel' } as const;
  const window = nozzleWindow(pairing)?.value ?? { low: 0, high: Number.POSITIVE_INFINITY };
  const wanted = Math.min(Math.max(stated.value, window.low), window.high);
  const limit = hotEndLimit(pairing);
  const hottest = hottestSetting(pairing);
  const sourcedValues =
    limit === null || wanted <= hottest ? [ground] : [ground, sourcedStatement(machine, limit)];
  if (window.low > hottest) {
    const note = `The hot end may be set to ${hottest} Cel at most, and at least ${window.low} Cel is asked for.`;
    return [{ ...base, window: null, sourcedValues, note }];
  }
  const inside = Math.min(wanted, hottest);
  const rounded = roundDown(inside, policy.data.rounding.temperature ?? 1);
  const value = rounded < window.low ? inside : rounded;
  const note =
    inside < wanted
      ? `Cut at the ${hottest} Cel that the hot end may be set to; ${wanted} Cel is asked for.`
      : '';
  return [{ ...base, window: { low: value, high: value }, sourcedValues, note }];
}
