import { conditionsOf, type Pairing } from '../../knowledge/pairing.ts';
import type { Registry } from '../../registry/registry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import type { CubicMillimetresPerSecond, Range } from '../../units/canonical.ts';
import { clean, roundDown, roundUp } from '../../units/round-to-step.ts';
import type { BareCondition, ConditionName } from './condition-row.ts';
import { dryingRows } from './drying-rows.ts';
import { firstLayerRow } from './first-layer-row.ts';
import { nozzleRows } from './nozzle-rows.ts';
import type { PairingLimits } from './pairing-limits.ts';
import { type SourcedValue, sourcedStatement } from './sourced-value.ts';
import { spoolRows } from './spool-rows.ts';

/**
 * What a print of a pairing needs besides its speeds: nozzle temperature for a flow, first layer, bed, chamber, fan,
 * shortest layer time, drying, and how long the spool lasts at the largest flow of the table, in mm3/s. Whatever is not
 * known has no row.
 */
export function conditionRows(
  registry: Registry,
  pairing: Pairing,
  limits: PairingLimits,
  largestFlow: CubicMillimetresPerSecond,
): BareCondition[] {
  return [
    ...nozzleRows(pairing, limits),
    ...firstLayerRow(pairing),
    ...bedRow(pairing),
    ...chamberRow(pairing),
    ...fanRow(pairing),
    ...layerTimeRow(pairing, limits),
    ...dryingRows(registry, pairing),
    ...spoolRows(pairing, largestFlow),
  ];
}

function bedRow(pairing: Pairing): BareCondition[] {
  const { filament, machine } = pairing;
  const stated = chooseStatement(filament.data.bedTemperature, conditionsOf(pairing));
  const limit = chooseStatement(machine.data.bed.temperatureLimit, conditionsOf(pairing));
  if (stated === null) return [];
  const ground = sourcedStatement(filament, stated);
  const reach = limit === null ? [] : [sourcedStatement(machine, limit)];
  return [withinReach('bedTemperature', pairing, stated.value, limit?.value, [ground, ...reach], 'bed')];
}

function chamberRow(pairing: Pairing): BareCondition[] {
  const { filament, machine } = pairing;
  const stated = chooseStatement(filament.data.chamberTemperature, conditionsOf(pairing));
  if (stated === null) return [];
  const { heated, enclosed, temperatureLimit } = machine.data.chamber;
  const limit = chooseStatement(temperatureLimit, conditionsOf(pairing));
  const ground = sourcedStatement(filament, stated);
  const reach = limit === null ? [] : [sourcedStatement(machine, limit)];
  const within = withinReach(
    'chamberTemperature',
    pairing,
    stated.value,
    limit?.value,
    [ground, ...reach],
    'chamber',
  );
  const unheated = enclosed
    ? 'The chamber has no heater: it warms by the bed alone.'
    : 'The machine is open: it holds no chamber temperature.';
  return [heated ? within : { ...within, note: [within.note, unheated].join(' ').trim() }];
}

/** A window of temperatures, cut at what the machine reaches; ends rounded into the window. */
function withinReach(
  name: ConditionName,
  { policy }: Pairing,
  { low, high }: Range,
  limit: number | undefined,
  sourcedValues: readonly SourcedValue[],
  part: string,
): BareCondition {
  const reach = limit ?? Number.POSITIVE_INFINITY;
  if (low > reach) {
    return row(
      name,
      null,
      'Cel',
      sourcedValues,
      `The ${part} reaches ${reach} Cel, and at least ${low} Cel is asked for.`,
    );
  }
  const cut = { low, high: Math.min(high, reach) };
  const note = cut.high < high ? `Cut at the ${reach} Cel that the ${part} reaches.` : '';
  return row(name, inward(cut, policy.data.rounding.temperature ?? 1), 'Cel', sourcedValues, note);
}

/** A window whose ends are rounded into it; as it is where no step lies inside. */
function inward({ low, high }: Range, step: number): Range {
  const rounded = { low: roundUp(low, step), high: roundDown(high, step) };
  return rounded.low <= rounded.high ? rounded : { low, high };
}

function fanRow(pairing: Pairing): BareCondition[] {
  const { filament, machine } = pairing;
  const stated = chooseStatement(filament.data.fan, conditionsOf(pairing));
  if (stated === null) return [];
  const ground = sourcedStatement(filament, stated);
  const window = inward({ low: clean(stated.value.low * 100), high: clean(stated.value.high * 100) }, 1);
  const cooling = machine.data.partCooling;
  const note =
    cooling === undefined
      ? 'Nothing is known of the part cooling of the machine.'
      : cooling.adjustable
        ? ''
        : 'The fan of the machine cannot be set: it runs at full speed or not at all.';
  return [row('fan', window, '%', [ground], note)];
}

function layerTimeRow({ policy }: Pairing, { layerTime }: PairingLimits): BareCondition[] {
  if (layerTime === null) return [];
  const seconds = roundUp(layerTime.value / (layerTime.cap?.share ?? 1), policy.data.rounding.time ?? 1);
  const sourcedValues = [layerTime.ground, ...(layerTime.cap === null ? [] : [layerTime.cap.ground])];
  return [row('shortestLayerTime', { low: seconds, high: seconds }, 's', sourcedValues, '')];
}

function row(
  name: ConditionName,
  window: Range | null,
  unit: BareCondition['unit'],
  sourcedValues: readonly SourcedValue[],
  note: string,
): BareCondition {
  return { name, flow: null, window, unit, sourcedValues, note };
}
