import { familiesOf } from '../../../knowledge/families.ts';
import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import { offsetText, partOffset, settingFor } from '../../../knowledge/part-offset.ts';
import { type Softening, softeningOf } from '../../../knowledge/softening.ts';
import type { Machine, Polymer } from '../../../registry/generated/documents.ts';
import type { Registry } from '../../../registry/registry.ts';
import { chooseStatement } from '../../../registry/statement.ts';
import type { DegreesCelsius, Range } from '../../../units/canonical.ts';
import { roundDown, roundUp } from '../../../units/round-to-step.ts';
import { rounded } from '../../../units/rounded.ts';
import { type SourcedValue, sourcedQuantity, sourcedStatement } from '../sourced-value.ts';
import { type BareCondition, isSet } from './condition-row.ts';
import { familyRow } from './family-row.ts';

/** Hours that are told apart beside a dryer. */
const toldApart = 0.01;

/** Setting of the machine's own dryer that is safe for the filament, and the time. */
export function dryingRows(registry: Registry, pairing: Pairing): BareCondition[] {
  return [dryingTemperatureRow(registry, pairing), dryingTimeRow(registry, pairing)];
}

function dryingTemperatureRow(registry: Registry, pairing: Pairing): BareCondition {
  const { filament } = pairing;
  const stated = chooseStatement(filament.data.dryingTemperature, conditionsOf(pairing));
  if (stated === null) return familyRow(registry, pairing, 'dryingTemperature', 'Cel', 1);
  const families = familiesOf(filament.data, registry);
  const softening = softeningOf(filament.data, families);
  const sourcedValues = [
    sourcedStatement(filament, stated),
    ...softeningSourcedValues(registry, pairing, families),
    ...settingSourcedValues(pairing),
  ];
  return temperatureRow(pairing, stated.value, softening, sourcedValues);
}

function dryingTimeRow(registry: Registry, pairing: Pairing): BareCondition {
  const { filament, policy } = pairing;
  const time = chooseStatement(filament.data.dryingTime, conditionsOf(pairing));
  if (time === null) return familyRow(registry, pairing, 'dryingTime', 'h', 3600);
  const seconds = roundUp(time.value, policy.data.rounding.time ?? 1);
  const hours = roundUp(seconds / 3600, toldApart);
  return {
    ...isSet('dryingTime', 'h', { low: hours, high: hours }, [sourcedStatement(filament, time)]),
    note: 'At the stated drying temperature; a colder dryer takes longer.',
  };
}

/** What says where the filament softens: its own profile, else the families that it is made of. */
function softeningSourcedValues(
  registry: Registry,
  { filament }: Pairing,
  families: readonly Polymer[],
): SourcedValue[] {
  const { softening = [] } = filament.data;
  if (softening.length > 0) {
    return softening.map((stated) => sourcedStatement(filament, stated));
  }
  const isGlassy = families.some(
    ({ structure, glassTransition = [] }) => structure === 'amorphous' && glassTransition.length > 0,
  );
  return families.flatMap(({ id, structure, glassTransition = [], melting = [] }) => {
    const profile = registry.polymer.get(id);
    if (profile === undefined || (isGlassy && structure !== 'amorphous')) return [];
    return (isGlassy ? glassTransition : melting).map((statement) => sourcedStatement(profile, statement));
  });
}

/** What the machine's own dryer can be set to, and how far below softening the house stays. */
function settingSourcedValues(pairing: Pairing): SourcedValue[] {
  const { machine, policy } = pairing;
  const { dryer } = machine.data;
  const { dryingMargin } = policy.data;
  const offset = dryer === undefined ? null : partOffset(machine.data, 'dryer', conditionsOf(pairing));
  return [
    ...(offset === null ? [] : [sourcedStatement(machine, offset.statement)]),
    ...(dryer?.range === undefined ? [] : [sourcedQuantity(machine, ['dryer', 'range'], dryer.range)]),
    ...(dryer?.temperature === undefined
      ? []
      : [sourcedQuantity(machine, ['dryer', 'temperature'], dryer.temperature)]),
    ...(dryingMargin === undefined ? [] : [sourcedQuantity(policy, ['dryingMargin'], dryingMargin)]),
  ];
}

/** What a dryer may be set to, or why it may not be used. */
interface Setting {
  readonly value: DegreesCelsius | null;
  readonly note: string;
}

function temperatureRow(
  pairing: Pairing,
  stated: DegreesCelsius,
  softening: Softening | null,
  sourcedValues: readonly SourcedValue[],
): BareCondition {
  const margin = pairing.policy.data.dryingMargin ?? 0;
  const safe = (softening?.value ?? Number.POSITIVE_INFINITY) - margin;
  const { value, note } = settingOf(pairing, stated, safe, softening);
  const window = value === null ? null : { low: value, high: value };
  return { ...isSet('dryingTemperature', 'Cel', window, sourcedValues), note };
}

function settingOf(
  pairing: Pairing,
  stated: DegreesCelsius,
  safe: DegreesCelsius,
  softening: Softening | null,
): Setting {
  const { machine, policy } = pairing;
  const { dryer } = machine.data;
  const step = policy.data.rounding.temperature ?? 1;
  if (dryer === undefined || settingsOf(dryer) === null) {
    const value = roundDown(Math.min(stated, safe), step);
    return { value, note: 'The machine has no dryer of its own that is known.' };
  }
  const offset = partOffset(machine.data, 'dryer', conditionsOf(pairing));
  const known = offset === null ? '' : ` It is ${offsetText(offset)}.`;
  const { low, high } = settingsOf(dryer) ?? { low: 0, high: 0 };
  if (low + (offset?.warmest ?? 0) > safe) {
    const runs = dryer.setting === 'fixed' ? `is fixed at ${low} Cel` : `runs at ${low} Cel at least`;
    return { value: null, note: `${doNotUse(runs, softening)}${known}` };
  }
  const wanted = Math.min(settingFor(stated, offset), safe - (offset?.warmest ?? 0));
  const value = Math.max(Math.min(roundDown(wanted, step), high), low);
  const real = rounded(value + (offset?.value ?? 0), 3);
  const note = dryer.setting === 'fixed' ? fixedNote(real, stated) : adjustedNote(real, stated);
  return { value, note: `${note}${known}`.trim() };
}

/** What a dryer can be set to; one temperature for both ends where it is fixed. */
function settingsOf({ setting, temperature, range }: NonNullable<Machine['dryer']>): Range | null {
  if (setting === 'adjustable') return range ?? null;
  return temperature === undefined ? null : { low: temperature, high: temperature };
}

function fixedNote(real: DegreesCelsius, stated: DegreesCelsius): string {
  const side = real === stated ? '' : `, ${real > stated ? 'above' : 'below'} the ${stated} Cel asked for`;
  return `The dryer is fixed there${side}.`;
}

/** Nothing to say where the dryer can be set to less than a degree from what is asked for. */
function adjustedNote(real: DegreesCelsius, stated: DegreesCelsius): string {
  if (Math.abs(real - stated) < 1) return '';
  const [side, why] = real > stated ? ['Above', ': the dryer runs no cooler'] : ['Below', ''];
  return `${side} the ${stated} Cel asked for${why}.`;
}

function doNotUse(what: string, softening: Softening | null): string {
  const why =
    softening === null ? '' : ` The filament is soft above ${softening.text}, and the spool would fuse.`;
  return `Do not use the dryer of the machine: it ${what}.${why}`;
}
