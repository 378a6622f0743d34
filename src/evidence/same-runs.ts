import { compareText } from '../registry/finding.ts';
import { groupedBy } from '../registry/grouped-by.ts';
import type { Profile } from '../registry/profile.ts';
import { oncePerRegistry, type Registry } from '../registry/registry.ts';

/** Keys of a trial that say what was run, and what was asked of it. */
const runKeys = [
  'method',
  'machine',
  'nozzle',
  'filament',
  'batch',
  'firmware',
  'job',
  'settings',
  'checkedPart',
  'acceptedDeficit',
  'acceptedStrength',
  'acceptedRipple',
  'acceptedDefect',
  'acceptedGrade',
  'residualMoisture',
] as const;

/** What a room is like differs from day to day, and no bench result holds for one of them alone. */
const ofTheRoom = new Set(['ambientTemperature', 'relativeHumidity', 'chamberTemperature']);

const runs = oncePerRegistry((registry) => groupedBy(registry.trial.values(), runKey));

function runKey({ data }: Profile<'trial'>): string {
  return JSON.stringify(runKeys.map((key) => data[key] ?? null));
}

/** The trials before this one, by date and id, that ran the same pairing and batch by the same method and under the same conditions. */
export function sameRuns(trial: Profile<'trial'>, registry: Registry): Profile<'trial'>[] {
  const all = runs(registry).get(runKey(trial)) ?? [];
  return all.filter(
    (other) => isEarlier(other, trial) && isAlike(other.data.conditions, trial.data.conditions),
  );
}

/** Whether a trial comes before another, by date and then by id. */
export function isEarlier(one: Profile<'trial'>, other: Profile<'trial'>): boolean {
  return (compareText(one.data.date, other.data.date) || compareText(one.id, other.id)) < 0;
}

type Conditions = Profile<'trial'>['data']['conditions'];

function isAlike(one: Conditions, other: Conditions): boolean {
  const known: Readonly<Record<string, unknown>> = other;
  return Object.entries(one).every(
    ([name, value]) => ofTheRoom.has(name) || known[name] === undefined || known[name] === value,
  );
}
