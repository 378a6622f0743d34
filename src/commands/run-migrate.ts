import { statSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { noSuchPath } from '../host/file-error.ts';
import { rootOf } from '../host/load-registry.ts';
import { readRegistryFile, readRegistryFiles } from '../host/registry-files.ts';
import { registryFolders } from '../host/registry-folders.ts';
import { tidyFolders } from '../host/writing/leftovers.ts';
import { replaceText } from '../host/writing/replace-text.ts';
import { type MigratedText, migrateText } from '../registry/migrations/migrate-text.ts';
import { migrations } from '../registry/migrations/migrations.ts';
import type { ReadFile } from '../registry/registry-file.ts';
import type { SourceText } from '../registry/source-text.ts';
import { type Problem, type Result, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { problemLine } from '../text/problem-text.ts';
import { counted } from '../text/words.ts';
import { type CliContext, exitStatus } from './cli-context.ts';
import type { Exit } from './exit.ts';

export async function runMigrate(
  paths: readonly string[],
  dryRun: boolean,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const files = wantedFiles(paths, cli.cwd);
  if (!files.ok) return exit.cannotRun(files.error);
  const unread = files.value.find((file) => !file.ok);
  if (unread !== undefined) {
    const help = 'Check that it is a plain file of UTF-8 text, and that you may read it.';
    return exit.cannotRun({ message: `${printable(unread.path)} cannot be read`, help });
  }
  const sources = files.value.flatMap((file) => (file.ok ? [file.source] : []));
  const { changed, byHand } = sortOut(sources);
  for (const line of byHand) cli.out(`${printable(line)}\n`);
  if (!dryRun) tidyFolders(sources.map(({ path }) => dirname(resolve(cli.cwd, path))));
  let done = 0;
  for (const change of changed) {
    const written = dryRun ? success(change) : await writeChange(change, cli.cwd);
    if (!written.ok) return exit.cannotRun(written.error);
    if (written.value === null) continue;
    cli.out(changeText(written.value));
    done += 1;
  }
  cli.out(summaryText(sources.length, done, byHand.length, dryRun));
  exit.with(byHand.length > 0 || (dryRun && changed.length > 0) ? exitStatus.findings : exitStatus.clean);
}

/** A file in an older shape, and its text in the present one. */
interface Change {
  readonly path: string;
  readonly text: string;
  readonly after: MigratedText;
}

/** How often a file is read anew into which others write at the same time. */
const mostAttempts = 20;

/** Writes a change, and returns what was changed: null where somebody else has brought the file up to date meanwhile. */
async function writeChange(planned: Change, cwd: string): Promise<Result<Change | null, Problem>> {
  let change = planned;
  for (let attempt = 1; ; attempt++) {
    const { path, text, after } = change;
    const written = await replaceText(path, { before: text, after: after.text }, cwd);
    if (written.ok) return success(change);
    if (written.error.code !== 'changedMeanwhile' || attempt === mostAttempts) return written;
    const [file] = filesOf(resolve(cwd, path), cwd);
    const again = file?.ok ? migrateText(file.source.text) : null;
    if (!file?.ok || !again?.ok) return written;
    if (again.value.applied.length === 0) return success(null);
    change = { path, text: file.source.text, after: again.value };
  }
}

function sortOut(sources: readonly SourceText[]): { changed: Change[]; byHand: string[] } {
  const changed: Change[] = [];
  const byHand: string[] = [];
  for (const { path, text } of sources) {
    const migrated = migrateText(text);
    if (!migrated.ok) byHand.push(`${path}: ${problemLine(migrated.error)}`);
    else if (migrated.value.applied.length > 0) changed.push({ path, text, after: migrated.value });
  }
  return { changed, byHand };
}

function summaryText(files: number, changed: number, byHand: number, dryRun: boolean): string {
  const left = byHand === 0 ? '' : `, ${byHand} to change by hand`;
  return `${counted(files, 'file')}: ${changed} ${dryRun ? 'would be changed' : 'changed'}${left}.\n`;
}

function changeText({ path, text, after }: Change): string {
  const titles = migrations
    .filter(({ number }) => after.applied.includes(number))
    .map(({ number, title }) => `  ${number}  ${title}\n`);
  const lines = changedLines(text, after.text).map((line) => `  ${printable(line)}\n`);
  return `${printable(path)}\n${titles.join('')}${lines.join('')}`;
}

function wantedFiles(paths: readonly string[], cwd: string): Result<readonly ReadFile[], Problem> {
  if (paths.length === 0) {
    const folders = registryFolders([], cwd);
    return folders.ok ? success(folders.value.slice(-1).flatMap((folder) => filesOf(folder, cwd))) : folders;
  }
  const missing = paths.find((path) => statSync(resolve(cwd, path), { throwIfNoEntry: false }) === undefined);
  if (missing !== undefined) return noSuchPath(missing);
  return success(paths.flatMap((path) => filesOf(resolve(cwd, path), cwd)));
}

/** The profiles in a folder, or the one file; links are refused, since they may lead elsewhere. */
function filesOf(absolute: string, cwd: string): ReadFile[] {
  return statSync(absolute).isDirectory()
    ? readRegistryFiles(rootOf(absolute, cwd))
    : [readRegistryFile(rootOf(dirname(absolute), cwd), basename(absolute))];
}

/** What differs between two texts: the lines from the first that differs to the last, `-` as before, `+` as after. */
function changedLines(before: string, after: string): string[] {
  const old = before.split(/\r?\n/);
  const now = after.split(/\r?\n/);
  const shorter = Math.min(old.length, now.length);
  let start = 0;
  while (start < shorter && old[start] === now[start]) start++;
  let end = 0;
  while (end < shorter - start && old.at(-1 - end) === now.at(-1 - end)) end++;
  return [
    ...old.slice(start, old.length - end).map((line) => `-${line}`),
    ...now.slice(start, now.length - end).map((line) => `+${line}`),
  ];
}
