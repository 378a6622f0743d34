import { fixProfile } from '../../registry/fix/fix-profile.ts';
import { expectedPath } from '../../registry/kind.ts';
import type { Profile } from '../../registry/profile.ts';
import { readProfile } from '../../registry/read-profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { fileOfText, refused } from '../../registry/registry-file.ts';
import { pathOfSibling } from '../../registry/relative-path.ts';
import type { Draft } from './draft.ts';
import { formatSheet, sortedRows } from './draft-sheet.ts';
import { formatDraftTrial } from './draft-trial.ts';
import type { PartFile } from './registry-part.ts';
import type { BenchSession } from './session.ts';

/** The trial of a draft and the sheet beside it, as they would stand in the registry. */
interface TrialFiles {
  readonly trial: PartFile;
  readonly sheet: PartFile;
  /** Names of the rows of the sheet, in its order. */
  readonly rows: readonly string[];
}

const trialId = /^[a-z0-9]+(?:[.-][a-z0-9]+)*$/;

/** Writes a draft as files, its quantities in their usual spelling. */
export function trialFiles({ places }: BenchSession, draft: Draft): TrialFiles {
  const typed = draft.fields.get('id')?.trim() ?? '';
  const id = trialId.test(typed) ? typed : 'unnamed';
  const year = /^\d{4}/.exec(draft.fields.get('date')?.trim() ?? '')?.[0] ?? 'undated';
  const path = expectedPath('trial', id, year);
  const sheetName = `${id}.csv`;
  const text = formatDraftTrial(draft, sheetName, pathToSchema(path, places.schemas, 'trial'));
  const sorted = sortedRows(draft);
  return {
    trial: { path, text: inUsualSpelling(path, text), isOwn: true },
    sheet: { path: pathOfSibling(path, sheetName), text: formatSheet(draft, sorted), isOwn: true },
    rows: sorted.complete.map(({ name }) => name),
  };
}

/** Path from a file to the schema of a kind; both are named from the root of the registry. */
export function pathToSchema(path: string, schemas: string, kind: 'trial' | 'addition'): string {
  return `${'../'.repeat(path.split('/').length - 1)}${schemas}/${kind}.schema.json`;
}

function inUsualSpelling(path: string, text: string): string {
  const root = { shown: '' };
  const { document } = readProfile(fileOfText(root, path, text), (name) =>
    refused(root, pathOfSibling(path, name), 'missing'),
  );
  return (document === null ? null : fixProfile(document)?.text) ?? text;
}

/** The trial of a draft in the registry that holds it; undefined where its form is so wrong that nothing of it can be used. */
export function trialIn(registry: Registry, { trial }: TrialFiles): Profile<'trial'> | undefined {
  return [...registry.trial.values()].find(({ source }) => source.relativePath === trial.path);
}
