import { dirname, resolve, sep } from 'node:path';
import { type ChangedFile, changedFiles } from '../../host/changed-files.ts';
import { affectedPaths } from '../../registry/dependants.ts';
import { identityOfPath } from '../../registry/kind.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { type Shard, shardsOf } from '../../rules/engine/evidence-shards.ts';
import type { CliContext } from '../cli-context.ts';
import type { CheckTarget } from './check-target.ts';
import type { CheckedFiles } from './checked-files.ts';

/** Which of the files that were read the user wants to hear about. */
interface CheckScope {
  readonly wantsFile: (file: string) => boolean;
}

/** What narrows a check down. */
interface Narrowing {
  /** Only what a change since this commit affects. */
  readonly changed?: string;
  /** Only one part of all there is to do. */
  readonly shard?: Shard;
}

/** The files under the paths asked for, or some of them. */
export async function scopeOf(
  files: CheckedFiles,
  target: CheckTarget,
  { changed, shard }: Narrowing,
  memory: ResultMemory,
  cli: CliContext,
): Promise<Result<CheckScope, Problem>> {
  if (changed !== undefined || shard !== undefined) await files.parseAhead(memory, cli);
  const scope = await changedScope(files, target, changed, cli.cwd);
  if (!scope.ok || shard === undefined) return scope;
  const { documents } = files.loaded().registry;
  const shards = shardsOf(
    documents.filter(({ source }) => scope.value.wantsFile(source.path)),
    shard.of,
  );
  // Files that are no documents, of which there are few, go with the first.
  const isInShard = (file: string) => (shards.get(file) ?? 1) === shard.number;
  return success({ wantsFile: (file) => scope.value.wantsFile(file) && isInShard(file) });
}

async function changedScope(
  files: CheckedFiles,
  { folders, loose, only }: CheckTarget,
  base: string | undefined,
  cwd: string,
): Promise<Result<CheckScope, Problem>> {
  const isAsked = rememberingFiles((file) => only === null || isWithin(resolve(cwd, file), only));
  if (base === undefined) return success({ wantsFile: isAsked });
  // An installed package is no work of this repository, and may lie outside of it.
  const worked = folders.filter((folder) => !folder.split(sep).includes('node_modules'));
  const changed = await changedFiles(base, [...worked, ...loose.map((file) => dirname(file))], cwd);
  if (!changed.ok) return changed;
  const isAffected = affectedBy(files.loaded(), changed.value, cwd);
  return success({ wantsFile: (file) => isAsked(file) && isAffected(file) });
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

/** A question about files that is asked once of each: of a hostile one there are a hundred thousand findings. */
function rememberingFiles(ask: (file: string) => boolean): (file: string) => boolean {
  const answers = new Map<string, boolean>();
  return (file) => {
    const answer = answers.get(file) ?? ask(file);
    answers.set(file, answer);
    return answer;
  };
}

function isWithin(file: string, folders: readonly string[]): boolean {
  return folders.some((folder) => file === folder || file.startsWith(folder + sep));
}
