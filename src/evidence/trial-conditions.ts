import { methodOf } from '../bench/methods.ts';
import { trialObservations } from '../bench/sheet/trial-observations.ts';
import { familiesOf } from '../knowledge/families.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { Path } from '../registry/shape.ts';
import type { Conditions, PlacedStatement } from '../registry/statement.ts';
import { enumerated } from '../text/words.ts';
import type { Dimension } from '../units/dimension.ts';
import { formatQuantity } from '../units/format-quantity.ts';
import type { EvidenceContext } from './evidence-context.ts';

/** Conditions of a measured statement that are other ones than those of its trial. */
export function* otherConditionHits(
  profile: AnyProfile,
  { path, statement }: PlacedStatement<Statement<unknown>>,
  { registry }: Pick<EvidenceContext, 'registry'>,
): Generator<Hit> {
  const trial = statement.evidence === undefined ? undefined : registry.trial.get(statement.evidence);
  if (statement.basis !== 'measured' || trial === undefined) return;
  const implied = isKnown(registry, trial) ? impliedBy(profile) : {};
  const stated = { ...implied, ...statement.at };
  yield* differences(path, stated, trial);
  yield* otherPolymer(path, stated, trial, registry);
  if (stated.acceleration !== undefined && knowsNoAcceleration(trial)) {
    yield {
      path: [...path, 'at', 'acceleration'],
      part: 'value',
      message: `The statement holds for acceleration ${formatQuantity(stated.acceleration, 'acceleration')}, but the trial "${trial.id}" does not say at which one it was run`,
      found: formatQuantity(stated.acceleration, 'acceleration'),
      allowed: 'no acceleration',
      help: 'Leave `acceleration` out of the statement; where the bench sheet tells it, the next trial says it under `conditions`.',
    };
  }
}

/** Whether what the trial was run with is there; a mistyped id of a profile is no other condition. */
function isKnown(registry: Registry, { data }: Profile<'trial'>): boolean {
  const hasMachine = data.machine === undefined || registry.machine.has(data.machine);
  return hasMachine && registry.filament.has(data.filament);
}

/** The profile itself is a condition: a filament's statements hold for that filament. */
function impliedBy(profile: AnyProfile): Conditions {
  if (profile.kind === 'filament') return { filament: profile.id };
  if (profile.kind === 'addition') return { filament: profile.data.filament };
  return profile.kind === 'machine' ? { machine: profile.id } : {};
}

/** A family that the filament of the trial does not belong to; one that is not known has a finding of its own. */
function* otherPolymer(
  path: Path,
  { polymer }: Conditions,
  trial: Profile<'trial'>,
  registry: Registry,
): Generator<Hit> {
  const filament = registry.filament.get(trial.data.filament)?.data;
  if (polymer === undefined || filament === undefined || filament.polymer === polymer) return;
  if (familiesOf(filament, registry).some(({ id }) => id === polymer)) return;
  yield {
    path: [...path, 'at', 'polymer'],
    part: 'value',
    message: `The statement holds for the polymer ${polymer}, but the trial "${trial.id}" was run with ${filament.polymer}, ${trial.data.filament}`,
    found: polymer,
    allowed: filament.polymer,
    help: `Name a trial that was run with ${polymer}, or correct \`polymer\`.`,
  };
}

/** Whether a trial says neither among its conditions nor in a column at which acceleration it was run. */
function knowsNoAcceleration(trial: Profile<'trial'>): boolean {
  if (trial.data.conditions.acceleration !== undefined) return false;
  const observations = trialObservations(trial, methodOf(trial.data.method));
  return observations.ok && observations.value.columns.acceleration === undefined;
}

const conditionNames = [
  'machine',
  'nozzle',
  'filament',
  'batch',
  'nozzleTemperature',
  'layerHeight',
  'acceleration',
] as const;

const dimensions: Partial<Record<(typeof conditionNames)[number], Dimension>> = {
  nozzleTemperature: 'temperature',
  layerHeight: 'length',
  acceleration: 'acceleration',
};

/** One finding for all that differs: a statement that names the wrong trial is one mistake. */
function* differences(path: Path, stated: Conditions, trial: Profile<'trial'>): Generator<Hit> {
  const { machine, nozzle, filament, batch, conditions } = trial.data;
  const { nozzleTemperature, layerHeight, acceleration } = conditions;
  const actual = { machine, nozzle, filament, batch, nozzleTemperature, layerHeight, acceleration };
  const differing = conditionNames.flatMap((name) => {
    const [asked, was] = [stated[name], actual[name]];
    if (asked === undefined || was === undefined || asked === was) return [];
    const [askedText = '', wasText = ''] = [asked, was].map((value) =>
      typeof value === 'number' ? formatQuantity(value, dimensions[name] ?? 'ratio') : value,
    );
    return [{ name, asked: askedText, was: wasText }];
  });
  if (differing.length === 0) return;
  const asked = differing.map((each) => each.asked).join(', ');
  const was = differing.map((each) => each.was).join(', ');
  yield {
    path: [...path, 'evidence'],
    part: 'value',
    blames: [{ path: [...path, 'evidence'] }],
    message: `The statement holds for ${enumerated(differing.map((each) => `${each.name} ${each.asked}`))}, but the trial "${trial.id}" was run with ${enumerated(differing.map((each) => each.was))}`,
    found: asked,
    allowed: was,
    help: `Name the trial that was run with ${asked}, or correct ${enumerated(differing.map(({ name }) => `\`${name}\``))}.`,
  };
}
