import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { Path } from '../registry/shape.ts';
import type { Conditions, PlacedStatement } from '../registry/statement.ts';
import { formatQuantity } from '../units/format-quantity.ts';
import type { EvidenceContext } from './evidence-context.ts';

/** Conditions of a measured statement that are other ones than those of its trial. */
export function* otherConditionHits(
  profile: AnyProfile,
  { path, statement }: PlacedStatement<Statement<unknown>>,
  { registry }: EvidenceContext,
): Generator<Hit> {
  const trial = statement.evidence === undefined ? undefined : registry.trial.get(statement.evidence);
  if (statement.basis !== 'measured' || trial === undefined) return;
  const implied = isKnown(registry, trial) ? impliedBy(profile) : {};
  yield* differences(path, { ...implied, ...statement.at }, trial);
}

/** Whether what the trial was run with is there; a mistyped id of a profile is no other condition. */
function isKnown(registry: Registry, { data }: Profile<'trial'>): boolean {
  const hasMachine = data.machine === undefined || registry.machine.has(data.machine);
  return hasMachine && registry.filament.has(data.filament);
}

/** The profile itself is a condition: a filament's statements hold for that filament. */
function impliedBy(profile: AnyProfile): Conditions {
  if (profile.kind === 'filament') return { filament: profile.id };
  return profile.kind === 'machine' ? { machine: profile.id } : {};
}

const conditionNames = [
  'machine',
  'nozzle',
  'filament',
  'batch',
  'nozzleTemperature',
  'acceleration',
] as const;

function* differences(path: Path, stated: Conditions, trial: Profile<'trial'>): Generator<Hit> {
  const { machine, nozzle, filament, batch, conditions } = trial.data;
  const { nozzleTemperature, acceleration } = conditions;
  const actual = { machine, nozzle, filament, batch, nozzleTemperature, acceleration };
  for (const name of conditionNames) {
    const [asked, was] = [stated[name], actual[name]];
    if (asked === undefined || was === undefined || asked === was) continue;
    const [askedText, wasText] = [asked, was].map((value) =>
      typeof value === 'number'
        ? formatQuantity(value, name === 'acceleration' ? 'acceleration' : 'temperature')
        : value,
    );
    yield {
      path: [...path, 'evidence'],
      part: 'value',
      message: `The statement holds for ${name} ${askedText}, but the trial "${trial.id}" was run with ${wasText}`,
      found: `${askedText}`,
      allowed: `${wasText}`,
      help: `Name the trial that was run with ${askedText}, or correct \`${name}\`.`,
    };
  }
}
