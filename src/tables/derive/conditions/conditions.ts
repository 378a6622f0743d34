import { bedReach } from '../../../knowledge/bed-bound.ts';
import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import { offsetText, partOffset, settingFor } from '../../../knowledge/part-offset.ts';
import type { Registry } from '../../../registry/registry.ts';
import { chooseStatement } from '../../../registry/statement.ts';
import type { CubicMillimetresPerSecond, Range } from '../../../units/canonical.ts';
import { clean, roundDown, roundUp } from '../../../units/round-to-step.ts';
import { shownRange } from '../../../units/wording.ts';
import type { PairingLimits } from '../limits/pairing-limits.ts';
import { type SourcedValue, sourcedStatement } from '../sourced-value.ts';
import { type BareCondition, type ConditionName, isNotStated, isSet } from './condition-row.ts';
import { dryingRows } from './drying-rows.ts';
import { nozzleRows } from './nozzle-rows.ts';
import { retractionRows } from './retraction-rows.ts';
import { spoolRows } from './spool-rows.ts';

/**
 * What a print of a pairing needs besides its speeds: nozzle temperature for a flow, first layer, bed, chamber, fan,
 * shortest layer time, drying, retraction, pressure compensation, and how long the spool lasts at the largest flow of the
 * table, in mm3/s. What is not stated has a row that says so.
 */
export function conditionRows(
  registry: Registry,
  pairing: Pairing,
  limits: PairingLimits,
  largestFlow: CubicMillimetresPerSecond,
): BareCondition[] {
  return [
    ...nozzleRows(pairing, limits),
    bedRow(pairing),
    chamberRow(pairing),
    fanRow(pairing),
    layerTimeRow(pairing, limits),
    ...dryingRows(registry, pairing),
    ...retractionRows(pairing),
    ...spoolRows(pairing, largestFlow),
  ];
}

function bedRow(pairing: Pairing): BareCondition {
  const { filament, machine } = pairing;
  const stated = chooseStatement(filament.data.bedTemperature, conditionsOf(pairing));
  const limit = chooseStatement(machine.data.bed.temperatureLimit, conditionsOf(pairing));
  if (stated === null) return isNotStated('bedTemperature', 'Cel');
  const ground = sourcedStatement(filament, stated);
  const reach = limit === null ? [] : [sourcedStatement(machine, limit)];
  const warmest = limit?.value ?? bedReach(machine.data) ?? undefined;
  return withinReach('bedTemperature', pairing, stated.value, warmest, [ground, ...reach], 'bed');
}

function chamberRow(pairing: Pairing): BareCondition {
  const { filament, machine } = pairing;
  const stated = chooseStatement(filament.data.chamberTemperature, conditionsOf(pairing));
  if (stated === null) return isNotStated('chamberTemperature', 'Cel');
  const { heated, enclosed, temperatureLimit } = machine.data.chamber;
  const limit = chooseStatement(temperatureLimit, conditionsOf(pairing));
  const ground = sourcedStatement(filament, stated);
  const reach = limit === null ? [] : [sourcedStatement(machine, limit)];
  const grounds = [ground, ...reach];
  const name = 'chamberTemperature';
  if (heated) return withinReach(name, pairing, stated.value, limit?.value, grounds, 'chamber');
  const within = cutAtReach(name, pairing, stated.value, limit?.value, grounds, 'chamber');
  const unheated = enclosed
    ? 'The chamber has no heater: it warms by the bed alone.'
    : 'The machine is open: it holds no chamber temperature.';
  return { ...within, note: [within.note, unheated].join(' ').trim() };
}

/** What to set for a window of temperatures, where the machine is known to be off what it says. */
function withinReach(
  name: ConditionName,
  pairing: Pairing,
  asked: Range,
  limit: number | undefined,
  sourcedValues: readonly SourcedValue[],
  part: 'bed' | 'chamber',
): BareCondition {
  const offset = partOffset(pairing.machine.data, part, conditionsOf(pairing));
  if (offset === null) return cutAtReach(name, pairing, asked, limit, sourcedValues, part);
  const set = { low: settingFor(asked.low, offset), high: settingFor(asked.high, offset) };
  const grounds = [...sourcedValues, sourcedStatement(pairing.machine, offset.statement)];
  const cut = cutAtReach(name, pairing, set, limit, grounds, part);
  const why = `To set, for ${shownRange(asked, 'temperature')}: the ${part} is ${offsetText(offset)}.`;
  return { ...cut, note: [why, cut.note].join(' ').trim() };
}

/** A window of settings, cut at what the machine reaches; ends rounded into the window. */
function cutAtReach(
  name: ConditionName,
  { policy }: Pairing,
  { low, high }: Range,
  limit: number | undefined,
  sourcedValues: readonly SourcedValue[],
  part: string,
): BareCondition {
  const reach = limit ?? Number.POSITIVE_INFINITY;
  if (low > reach) {
    return noted(
      isSet(name, 'Cel', null, sourcedValues),
      `The ${part} reaches ${reach} Cel, and at least ${low} Cel is asked for.`,
    );
  }
  const cut = { low, high: Math.min(high, reach) };
  const note = cut.high < high ? `Cut at the ${reach} Cel that the ${part} reaches.` : '';
  const window = inward(cut, policy.data.rounding.temperature ?? 1);
  return noted(isSet(name, 'Cel', window, sourcedValues), note);
}

/** A window whose ends are rounded into it; as it is where no step lies inside. */
function inward({ low, high }: Range, step: number): Range {
  const rounded = { low: roundUp(low, step), high: roundDown(high, step) };
  return rounded.low <= rounded.high ? rounded : { low, high };
}

/** The window of the filament; what each feature gets of it stands in its rows. */
function fanRow(pairing: Pairing): BareCondition {
  const { filament, machine } = pairing;
  const stated = chooseStatement(filament.data.fan, conditionsOf(pairing));
  if (stated === null) return isNotStated('fan', '%');
  const window = inward({ low: clean(stated.value.low * 100), high: clean(stated.value.high * 100) }, 1);
  const cooling = machine.data.partCooling;
  const note =
    cooling === undefined
      ? 'Nothing is known of the part cooling of the machine.'
      : cooling.adjustable
        ? ''
        : 'The fan of the machine cannot be set: it runs at full speed or not at all.';
  return noted(isSet('fan', '%', window, [sourcedStatement(filament, stated)]), note);
}

function layerTimeRow({ policy }: Pairing, { layerTime }: PairingLimits): BareCondition {
  if (layerTime === null) return isNotStated('shortestLayerTime', 's');
  const seconds = roundUp(layerTime.value / (layerTime.cap?.share ?? 1), policy.data.rounding.time ?? 1);
  const sourcedValues = [layerTime.ground, ...(layerTime.cap === null ? [] : [layerTime.cap.ground])];
  return isSet('shortestLayerTime', 's', { low: seconds, high: seconds }, sourcedValues);
}

function noted(row: BareCondition, note: string): BareCondition {
  return { ...row, note };
}
