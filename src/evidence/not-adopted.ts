import { adoptingKind } from '../bench/adopt/adopt-limit.ts';
import { type AdoptedStatement, adoptedStatements } from '../bench/adopt/adopted-statement.ts';
import type { TrialResults } from '../bench/reduction.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import { type PlacedStatement, statementsOf } from '../registry/statement.ts';
import { changedReadings } from './changed-readings.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { supportFaults } from './limit-support.ts';
import { missingConditionHits } from './missing-conditions.ts';
import { propertyOf } from './statement-intervals.ts';
import { otherConditionHits } from './trial-conditions.ts';

/**
 * What a measured statement lacks of what adopting its trial writes; nothing where its readings refute it, or have changed
 * since the profile adopted something from them.
 */
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
  const reduced = context.registry.filament.has(trial.data.filament) ? context.reduce(trial.id) : null;
  if (!reduced?.ok) return;
  const adopted = whatAdoptingWrites(profile.kind, placed, trial, reduced.value);
  const missing = adopted === null ? [] : missingKeys(statement, adopted);
  if (missing.length === 0 || isRefuted(profile, placed, context) || hasChanged(profile, trial)) return;
  const texts = missing.map(([name, text]) => `${name}: ${text}`).join(', ');
  yield {
    path,
    part: 'value',
    message: `The limit lacks what adopting it from the trial "${trial.id}" writes: ${texts}`,
    found: `no ${missing.map(([name]) => name).join(', no ')}`,
    allowed: texts,
    help: `Compare the readings with the bench sheet. Where they are right, ${
      adoptingKind(reduced.value) === profile.kind
        ? `run \`meltbounds reduce ${trial.id} --adopt\`; a value that is lower for a \`reason\` stays.`
        : `add to the statement: ${texts}`
    }`,
  };
}

type WrittenKey = readonly [name: 'interval' | 'readings', text: string];

function missingKeys(statement: Statement<unknown>, adopted: AdoptedStatement): readonly WrittenKey[] {
  return (['interval', 'readings'] as const).flatMap((name) => {
    const text = adopted[name];
    return text === null || statement[name] !== undefined ? [] : [[name, text] as const];
  });
}

/** Whether a profile was given a value by other readings than a trial has now. */
function hasChanged(profile: AnyProfile, trial: Profile<'trial'>): boolean {
  return [...statementsOf(profile)].some(
    ({ statement }) => statement.evidence === trial.id && changedReadings(statement, trial) !== null,
  );
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
  reduced: TrialResults,
): AdoptedStatement | null {
  return (
    adoptedStatements(trial, reduced, kind).find(
      ({ property, acceleration }) =>
        property === propertyOf(path) &&
        (acceleration ?? statement.at?.acceleration) === statement.at?.acceleration,
    ) ?? null
  );
}
