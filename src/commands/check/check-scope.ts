import { dirname, resolve, sep } from 'node:path';
import { type ChangedFile, changedFiles } from '../../host/changed-files.ts';
import { affectedPaths } from '../../registry/dependants.ts';
import type { Finding } from '../../registry/finding.ts';
import { identityOfPath } from '../../registry/kind.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import { type Problem, type Result, success } from '../../result.ts';
import type { CheckTarget } from './check-target.ts';

/** Which of the files that were read the user wants to hear about. */
interface CheckScope {
  readonly wantsFile: (file: string) => boolean;
  readonly wantsFinding: (finding: Finding) => boolean;
}

/** The files under the paths asked for, of these only what a change since a commit affects, if one is named. */
export async function checkScope(
  loaded: LoadedRegistry,
  { folders, loose, only }: CheckTarget,
  base: string | undefined,
  cwd: string,
): Promise<Result<CheckScope, Problem>> {
  const isAsked = (file: string) => only === null || isWithin(resolve(cwd, file), only);
  if (base === undefined) return success(scopeOf(loaded, isAsked));
  // An installed package is no work of this repository, and may lie outside of it.
  const worked = folders.filter((folder) => !folder.split(sep).includes('node_modules'));
  const changed = await changedFiles(base, [...worked, ...loose.map((file) => dirname(file))]);
  if (!changed.ok) return changed;
  const isAffected = affectedBy(loaded, changed.value, cwd);
  return success(scopeOf(loaded, (file) => isAsked(file) && isAffected(file)));
}

function affectedBy(
  { registry }: LoadedRegistry,
  changed: readonly ChangedFile[],
  cwd: string,
): (file: string) => boolean {
  const paths = new Set(changed.map(({ path }) => path));
  const isChanged = (file: string) => paths.has(resolve(cwd, file));
  const identities = changed.flatMap(({ relativePath }) => identityOfPath(relativePath) ?? []);
  const affected = affectedPaths(registry, { isChanged, identities });
  return (file) => affected.has(file) || isChanged(file);
}

function scopeOf(loaded: LoadedRegistry, wantsFile: (file: string) => boolean): CheckScope {
  const readings = attachmentsOf(loaded, wantsFile);
  return { wantsFile, wantsFinding: ({ file }) => wantsFile(file) || readings.has(file) };
}

/** Files of readings that belong to wanted trials: what is wrong in them is wrong with the trial. */
function attachmentsOf({ registry }: LoadedRegistry, wanted: (file: string) => boolean): ReadonlySet<string> {
  const attachments = registry.profiles.map(({ source, attachment }) =>
    attachment?.ok && wanted(source.path) ? [attachment.source.path] : [],
  );
  return new Set(attachments.flat());
}

function isWithin(file: string, folders: readonly string[]): boolean {
  return folders.some((folder) => file === folder || file.startsWith(folder + sep));
}
