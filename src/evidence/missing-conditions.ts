import { limitsOfMethod } from '../bench/adopt/adoptable-limits.ts';
import { conditionsKnown } from '../bench/adopt/adopted-statement.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { type PlacedStatement, statementsOf } from '../registry/statement.ts';
import { keysInsertion } from '../registry/yaml/edit-yaml.ts';
import type { TextEdit } from '../registry/yaml/text-edit.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { propertyOf } from './statement-intervals.ts';
import { otherConditionHits } from './trial-conditions.ts';

/** Conditions that the trial of a measured statement knows, and that the statement leaves out: it would hold for all. */
export function* missingConditionHits(
  profile: AnyProfile,
  placed: PlacedStatement<Statement<unknown>>,
  context: Pick<EvidenceContext, 'registry'>,
): Generator<Hit> {
  const { path, statement } = placed;
  const missing = missingConditions(profile, placed, context.registry);
  if (missing.length === 0) return;
  const names = missing.map(([name]) => name).join(', ');
  const texts = conditionsText(missing);
  yield {
    path: statement.at === undefined ? path : [...path, 'at'],
    part: statement.at === undefined ? 'value' : 'key',
    message: `The statement does not say for which ${names} it holds, and the trial "${statement.evidence}" knows: ${texts}`,
    found: `no ${names}`,
    allowed: texts,
    help: `${statement.at === undefined ? `Add \`at: {${texts}}\`` : `Add under \`at\`: ${texts}`}; \`meltbounds check --fix\` does.`,
  };
}

type Missing = ReturnType<typeof conditionsKnown>;

function missingConditions(
  profile: AnyProfile,
  placed: PlacedStatement<Statement<unknown>>,
  registry: Registry,
): Missing {
  const { path, statement } = placed;
  const trial = registry.trial.get(statement.evidence ?? '');
  if (statement.basis !== 'measured' || trial === undefined) return [];
  // What an addition states is stated of a filament.
  const kind = profile.kind === 'addition' ? 'filament' : profile.kind;
  const property = propertyOf(path);
  const limit = limitsOfMethod(trial.data.method, kind).find((each) => each.property === property);
  if (limit === undefined) return [];
  const missing = conditionsKnown(trial, limit).filter(([name]) => statement.at?.[name] === undefined);
  // A statement that names the wrong trial is one mistake.
  const isOfTrial = () => otherConditionHits(profile, placed, { registry }).next().done === true;
  return missing.length === 0 || isOfTrial() ? missing : [];
}

function conditionsText(conditions: Missing): string {
  return conditions.map(([name, text]) => `${name}: ${text}`).join(', ');
}

/** The edits of the text of a profile that add to its measured statements what their trials know of the conditions. */
export function missingConditionEdits(profile: AnyProfile, registry: Registry): TextEdit[] {
  const { source, yaml, originalPath } = profile;
  return [...statementsOf(profile)].flatMap((placed) => {
    const missing = missingConditions(profile, placed, registry);
    if (missing.length === 0) return [];
    const place = originalPath(placed.path);
    const edit =
      placed.statement.at === undefined
        ? keysInsertion(source.text, yaml, place, [['at', `{${conditionsText(missing)}}`]], 'evidence')
        : keysInsertion(source.text, yaml, [...place, 'at'], missing);
    return edit.ok ? [edit.value] : [];
  });
}
