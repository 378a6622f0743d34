import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { groupedBy } from '../../registry/grouped-by.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { jsonText } from '../../text/json-text.ts';
import { printable } from '../../text/printable.ts';
import { sha256Of } from '../../text/sha256.ts';
import { linkElsewhere } from '../file-error.ts';
import { isLink, leadsOut } from '../inside.ts';
import { noLink, readPlainFile } from '../read-plain-file.ts';
import { underLock } from './folder-lock.ts';
import { removeQuietly } from './leftovers.ts';
import { replaceFile } from './put-file.ts';
import { makeFolder, unwritableFolder } from './write-files.ts';

/** A file by its path from the folder, with `/` between folders. */
type NamedText = readonly [path: string, text: string];

/** What a run has changed in a folder. */
interface FolderChange {
  readonly changed: number;
  readonly removed: number;
}

/** Why a folder was not brought up to date. */
type SyncProblem = Problem<'unwritable' | 'linkElsewhere' | 'busy' | 'notOurs'>;

/** The list of what earlier runs have written, with the digest of each, so that what is gone can be removed. */
const ledgerName = 'files.json';
const ledgerFormat = 'meltbounds-files/1';

/** Bytes of a file that is compared; what is larger is none of ours. */
const mostBytes = 1 << 27;

/**
 * Brings a folder to hold some files: those that differ are written, and those that an earlier run has written and that are
 * no longer wanted are removed, unless somebody has changed them since. Files of others are never written over. `named` is
 * what the user calls the folder.
 */
export async function syncFolder(
  files: readonly NamedText[],
  folder: string,
  named: string,
  cwd: string,
): Promise<Result<FolderChange, SyncProblem>> {
  try {
    if (leadsOut(folder, cwd)) return linkElsewhere(named);
    const wanted = ledgerOf(files);
    const made = await makeFolder(folder, [...files, [ledgerName, ledgerText(wanted)]], named);
    if (!made.ok) return made;
    if (made.value) return success({ changed: files.length, removed: 0 });
    const before = readLedger(folder);
    const changed = files.filter(([path, text]) => contentOf(folder, path) !== text);
    const astray = changed.find(([path]) => isAstray(folder, path));
    if (astray !== undefined) return linkElsewhere(join(named, astray[0]));
    const foreign = changed.find(([path]) => !before.has(path) && existsSync(join(folder, path)));
    if (foreign !== undefined) return notOurs(join(named, foreign[0]));
    // A run that is ended on the way has said before what is its own.
    const claimed = new Map([...before, ...wanted]);
    const writes: NamedText[][] = [[[ledgerName, ledgerText(claimed)]], changed];
    if (changed.length === 0) writes.length = 0;
    for (const part of writes) {
      const put = await putAll(part, folder, named);
      if (!put.ok) return put;
    }
    const removed = removeGone(folder, before, wanted);
    if (contentOf(folder, ledgerName) !== ledgerText(wanted)) {
      const put = await putAll([[ledgerName, ledgerText(wanted)]], folder, named);
      if (!put.ok) return put;
    }
    return success({ changed: changed.length, removed });
  } catch (error) {
    return unwritableFolder(named, error);
  }
}

type Ledger = ReadonlyMap<string, string>;

function ledgerOf(files: readonly NamedText[]): Ledger {
  return new Map(files.map(([path, text]) => [path, sha256Of(text)]));
}

function ledgerText(ledger: Ledger): string {
  const sorted = [...ledger].sort(([one], [other]) => (one < other ? -1 : 1));
  return jsonText({ format: ledgerFormat, files: Object.fromEntries(sorted) });
}

/** What earlier runs have written; nothing where the list is no list of ours. */
function readLedger(folder: string): Ledger {
  const text = contentOf(folder, ledgerName);
  if (text === null) return new Map();
  try {
    const list: unknown = JSON.parse(text);
    if (typeof list !== 'object' || list === null || !('files' in list) || !('format' in list))
      return new Map();
    if (list.format !== ledgerFormat || typeof list.files !== 'object') return new Map();
    const entries = Object.entries(list.files ?? {});
    return new Map(entries.filter(([path, digest]) => isPlainPath(path) && typeof digest === 'string'));
  } catch {
    return new Map();
  }
}

/** Whether a path leads from a folder into it and nowhere else. */
function isPlainPath(path: string): boolean {
  return path.split('/').every((part) => part !== '' && part !== '.' && part !== '..' && !/[\\:]/.test(part));
}

function isAstray(folder: string, path: string): boolean {
  return leadsOut(dirname(join(folder, path)), folder) || isLink(join(folder, path));
}

/** The text of a file; null where there is none that can be read. */
function contentOf(folder: string, path: string): string | null {
  try {
    const read = readPlainFile(join(folder, path), mostBytes, noLink);
    return read.ok ? read.value.toString('utf8') : null;
  } catch {
    return null;
  }
}

async function putAll(
  files: readonly NamedText[],
  folder: string,
  named: string,
): Promise<Result<null, Problem<'busy'>>> {
  for (const [inner, listed] of groupedBy(files, ([path]) => dirname(join(folder, path)))) {
    mkdirSync(inner, { recursive: true });
    const put = await underLock<null, never>(inner, named, (mark) => {
      for (const [path, text] of listed) replaceFile(join(folder, path), text, mark);
      return success(null);
    });
    if (!put.ok) return put;
  }
  return success(null);
}

/** Removes what is no longer wanted and still is what was written; how many files that were. */
function removeGone(folder: string, before: Ledger, wanted: Ledger): number {
  const gone = [...before].filter(([path, digest]) => {
    if (wanted.has(path) || isAstray(folder, path)) return false;
    const text = contentOf(folder, path);
    return text !== null && sha256Of(text) === digest;
  });
  for (const [path] of gone) removeQuietly(join(folder, path));
  return gone.length;
}

function notOurs(path: string) {
  return refusal(
    'notOurs',
    `${printable(path)} is there already, and no earlier run has written it; nothing was written`,
    'Name a folder of its own for the catalogue.',
  );
}
