import { type Problem, type Result, refusal, success } from '../../result.ts';
import { sameValue } from '../same-value.ts';
import { applyEdits } from '../yaml/text-edit.ts';
import { readYaml, type YamlDocument } from '../yaml/yaml-document.ts';
import type { Mapping, Migration } from './migration.ts';
import { migrations } from './migrations.ts';

/** A text in the present shape of the format. */
export interface MigratedText {
  readonly text: string;
  /** Numbers of the migrations that have changed it, in their order; none where it has the present shape already. */
  readonly applied: readonly string[];
}

/** A place that a person has to change. */
export type MigrationProblem = Problem<'changeByHand'>;

/**
 * Brings the text of a profile into the present shape of the format; comments, order and everything that is new already
 * stay byte for byte. A text that cannot be read stays as it is, since `check` says why. Problem: an old
 * shape is written in a way that could not be changed without touching more than it should.
 */
export function migrateText(text: string): Result<MigratedText, MigrationProblem> {
  let now = text;
  const applied: string[] = [];
  for (const migration of migrations) {
    const migrated = migrateOnce(now, migration);
    if (migrated === null) continue;
    if (!migrated.ok) return migrated;
    now = migrated.value;
    applied.push(migration.number);
  }
  return success({ text: now, applied });
}

/** The text after a migration; null where it does not have its old shape. */
function migrateOnce(text: string, migration: Migration): Result<string, MigrationProblem> | null {
  const { document } = readYaml(text);
  const before = document === null ? null : mapping(document);
  const oldPlace = document && before && migration.oldPlace(document, before, text);
  if (document === null || before === null || oldPlace === null) return null;
  const edited = applyEdits(text, migration.edits(document, text, before));
  const { document: after, problems } = readYaml(edited);
  const asMeant =
    after !== null && problems.length === 0 && sameValue(after.value, migration.meaning(before));
  return asMeant
    ? success(edited)
    : refusal(
        'changeByHand',
        `"${oldPlace.join('.')}" could not be changed without touching more: ${migration.title}`,
        'Change it by hand, or write it on a line of its own.',
      );
}

function mapping(document: YamlDocument): Mapping | null {
  const value = document.value;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return null;
  return Object.fromEntries(Object.entries(value));
}
