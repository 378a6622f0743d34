import { adoptingKind } from '../bench/adopt/adopt-limit.ts';
import { type AdoptedStatement, adoptedStatements } from '../bench/adopt/adopted-statement.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import type { PlacedStatement } from '../registry/statement.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { supportFaults } from './limit-support.ts';
import { missingConditionHits } from './missing-conditions.ts';
import { propertyOf } from './statement-intervals.ts';
import { otherConditionHits } from './trial-conditions.ts';

/** What a measured statement lacks of what adopting its trial writes; nothing where its readings refute it. */
export function* notAdoptedHits(
  profile: AnyProfile,
  placed: PlacedStatement<Statement<unknown>>,
  context: EvidenceContext,
): Generator<Hit> {
  const { path, statement } = placed;
  if (profile.kind !== 'filament' && profile.kind !== 'machine') return;
  const trial = context.registry.trial.get(statement.evidence ?? '');
  if (statement.basis !== 'measured' || trial === undefined) return;
  if (statement.interval !== undefined && statement.readings !== undefined) return;
  const adopted = whatAdoptingWrites(profile.kind, placed, trial, context);
  if (adopted === null) return;
  const missing = [
    ...(statement.interval === undefined && adopted.interval !== null
      ? [`interval: ${adopted.interval}`]
      : []),
    ...(statement.readings === undefined && adopted.readings !== null
      ? [`readings: ${adopted.readings}`]
      : []),
  ];
  if (missing.length === 0 || isRefuted(profile, placed, context)) return;
  yield {
    path,
    part: 'value',
    message: `The limit lacks what adopting it from the trial "${trial.id}" writes: ${missing.join(', ')}`,
    found: `no ${missing.map((text) => text.split(':')[0]).join(', no ')}`,
    allowed: missing.join(', '),
    help: `Run \`meltbounds reduce ${trial.id} --adopt\`; a value that is lower for a \`reason\` stays.`,
  };
}

/** Whether its readings or its conditions speak against a statement, which then is no limit to adopt again. */
function isRefuted(...of: Parameters<typeof supportFaults>): boolean {
  const faults = [supportFaults(...of), otherConditionHits(...of), missingConditionHits(...of)];
  return faults.some((found) => !found.next().done);
}

function whatAdoptingWrites(
  kind: 'filament' | 'machine',
  { path, statement }: PlacedStatement<Statement<unknown>>,
  trial: Profile<'trial'>,
  { reduce, registry }: EvidenceContext,
): AdoptedStatement | null {
  const reduced = registry.filament.has(trial.data.filament) ? reduce(trial.id) : null;
  if (!reduced?.ok || adoptingKind(reduced.value) !== kind) return null;
  return (
    adoptedStatements(trial, reduced.value, kind).find(
      ({ property, acceleration }) =>
        property === propertyOf(path) &&
        (acceleration ?? statement.at?.acceleration) === statement.at?.acceleration,
    ) ?? null
  );
}
