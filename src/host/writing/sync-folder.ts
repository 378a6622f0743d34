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
import { removeQuietly, tidyFolders } from './leftovers.ts';
import { layReady, partBeside, placeFiles, placeFolder, replaceFile } from './put-file.ts';
import { unwritableFolder } from './write-files.ts';

/** A file by its path from the folder, with `/` between folders; without a text it is there already, with that digest. */
type Entry =
  | { readonly path: string; readonly text: string }
  | { readonly path: string; readonly digest: string };

/** What a run has changed in a folder. */
interface FolderChange {
  readonly files: number;
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
 * Brings a folder to hold some files, which come one after the other, so that no more than one is held: those that differ are
 * written, and those that an earlier run has written and that are no longer wanted are removed, unless somebody has changed them
 * since. Files of others are never written over. What is to be written lies beside its place until all is made and `confirm` agrees.
 * `named` is what the user calls the folder.
 */
export async function syncFolder<Failure = never>(
  entries: Iterable<Entry>,
  folder: string,
  named: string,
  cwd: string,
  confirm: () => Result<null, Failure> = () => success(null),
): Promise<Result<FolderChange, SyncProblem | Failure>> {
  try {
    if (leadsOut(folder, cwd)) return linkElsewhere(named);
    const isThere = existsSync(folder);
    if (!isThere) mkdirSync(dirname(folder), { recursive: true });
    tidyFolders([dirname(folder), folder]);
    const beside = partBeside(isThere ? join(folder, ledgerName) : folder);
    try {
      const gathered = gather(entries, { folder, named, beside });
      if (!gathered.ok) return gathered;
      const confirmed = confirm();
      if (!confirmed.ok) return confirmed;
      return await place(gathered.value, { folder, named, beside });
    } finally {
      removeQuietly(beside);
    }
  } catch (error) {
    return unwritableFolder(named, error);
  }
}

interface Places {
  readonly folder: string;
  readonly named: string;
  /** Where files lie ready. */
  readonly beside: string;
}

interface Gathered {
  readonly wanted: Ledger;
  /** Paths of what lies ready. */
  readonly changed: readonly string[];
}

/** Lays ready what differs from what is there. Problems: files of others, links. */
function gather(
  entries: Iterable<Entry>,
  { folder, named, beside }: Places,
): Result<Gathered, Problem<'linkElsewhere' | 'notOurs'>> {
  const isThere = existsSync(folder);
  const before = readLedger(folder);
  const wanted = new Map<string, string>();
  const changed: string[] = [];
  for (const entry of entries) {
    const { path } = entry;
    wanted.set(path, 'digest' in entry ? entry.digest : sha256Of(entry.text));
    if ('digest' in entry || contentOf(folder, path) === entry.text) continue;
    if (isThere && isAstray(folder, path)) return linkElsewhere(join(named, path));
    if (isThere && !before.has(path) && existsSync(join(folder, path))) return notOurs(join(named, path));
    layReady(join(beside, path), entry.text);
    changed.push(path);
  }
  return success({ wanted, changed });
}

/** Moves what lies ready to its place: the whole folder if none is there, else file by file. */
async function place(
  { wanted, changed }: Gathered,
  { folder, named, beside }: Places,
): Promise<Result<FolderChange, SyncProblem>> {
  layReady(join(beside, ledgerName), ledgerText(wanted));
  const made = await underLock<boolean, never>(dirname(folder), named, (mark) => {
    if (existsSync(folder)) return success(false);
    placeFolder(beside, folder, mark);
    return success(true);
  });
  if (!made.ok) return made;
  if (made.value) return success({ files: wanted.size, changed: changed.length, removed: 0 });
  const before = readLedger(folder);
  const foreign = changed.find((path) => !before.has(path) && existsSync(join(folder, path)));
  if (foreign !== undefined) return notOurs(join(named, foreign));
  // A run that is ended on the way has said before what is its own.
  const claimed = new Map([...before, ...wanted]);
  const put =
    changed.length === 0 ? success(null) : await placeAll(changed, claimed, { folder, named, beside });
  if (!put.ok) return put;
  const removed = removeGone(folder, before, wanted);
  const noted = await putLedger(wanted, folder, named);
  if (!noted.ok) return noted;
  return success({ files: wanted.size, changed: changed.length, removed });
}

/** Under one lock: others of its kind wait there, and a run that is ended leaves nothing in the folders below. */
async function placeAll(
  changed: readonly string[],
  claimed: Ledger,
  { folder, named, beside }: Places,
): Promise<Result<null, Problem<'busy'>>> {
  const noted = await putLedger(claimed, folder, named);
  if (!noted.ok) return noted;
  return underLock<null, never>(folder, named, (mark) => {
    for (const [inner, paths] of groupedBy(changed, (path) => dirname(path))) {
      const there = join(folder, inner);
      mkdirSync(there, { recursive: true });
      const names = paths.map((path) => path.slice(path.lastIndexOf('/') + 1));
      placeFiles(join(beside, inner), there, names, { mark, locked: folder });
    }
    return success(null);
  });
}

/** Writes the list of what is ours, unless it says so already. */
async function putLedger(
  ledger: Ledger,
  folder: string,
  named: string,
): Promise<Result<null, Problem<'busy'>>> {
  const text = ledgerText(ledger);
  if (contentOf(folder, ledgerName) === text) return success(null);
  return underLock<null, never>(folder, named, (mark) => {
    replaceFile(join(folder, ledgerName), text, mark);
    return success(null);
  });
}

/** Whether a file of a folder holds a text of that digest. */
export function holdsDigest(folder: string, path: string, digest: string): boolean {
  const text = isAstray(folder, path) ? null : contentOf(folder, path);
  return text !== null && sha256Of(text) === digest;
}

type Ledger = ReadonlyMap<string, string>;

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
