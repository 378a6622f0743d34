import { limitsOfMethod } from '../bench/adopt/adoptable-limits.ts';
import { conditionsKnown } from '../bench/adopt/adopted-statement.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { PlacedStatement } from '../registry/statement.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { propertyOf } from './statement-intervals.ts';
import { otherConditionHits } from './trial-conditions.ts';

/** Conditions that the trial of a measured statement knows, and that the statement leaves out: it would hold for all. */
export function* missingConditionHits(
  profile: AnyProfile,
  placed: PlacedStatement<Statement<unknown>>,
  context: EvidenceContext,
): Generator<Hit> {
  const { path, statement } = placed;
  const trial = context.registry.trial.get(statement.evidence ?? '');
  if (statement.basis !== 'measured' || trial === undefined) return;
  const property = propertyOf(path);
  const limit = limitsOfMethod(trial.data.method, profile.kind).find((each) => each.property === property);
  // A statement that names the wrong trial is one mistake.
  if (limit === undefined || !otherConditionHits(profile, placed, context).next().done) return;
  const missing = conditionsKnown(trial, limit).filter(([name]) => statement.at?.[name] === undefined);
  if (missing.length === 0) return;
  const names = missing.map(([name]) => name).join(', ');
  const texts = missing.map(([name, text]) => `${name}: ${text}`).join(', ');
  yield {
    path: statement.at === undefined ? path : [...path, 'at'],
    part: statement.at === undefined ? 'value' : 'key',
    message: `The statement does not say for which ${names} it holds, and the trial "${trial.id}" knows: ${texts}`,
    found: `no ${names}`,
    allowed: texts,
    help: statement.at === undefined ? `Add \`at: {${texts}}\`.` : `Add under \`at\`: ${texts}`,
  };
}
