import { dirname, relative, resolve, sep } from 'node:path';
import { adoptedFile } from '../../bench/adopt/adopted-file.ts';
import type { Reduction } from '../../bench/reduction.ts';
import { schemaPathFrom } from '../../host/schema-files.ts';
import { tidyFolders } from '../../host/writing/leftovers.ts';
import { replaceText } from '../../host/writing/replace-text.ts';
import { writeNewFile } from '../../host/writing/write-new-file.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { SourceText } from '../../registry/source-text.ts';
import { type Problem, type Result, success } from '../../result.ts';

/** Where limits may be written: the team's own registry, the last of those that were read. */
interface OwnRegistry {
  /** Absolute path. */
  readonly folder: string;
  readonly cwd: string;
}

/** How often a profile is read anew into which others write at the same time. */
const mostAttempts = 20;

/**
 * Writes the limits of a trial into the profile that states them. The profile of a registry that the own one rests on
 * stays as it is: limits of its filaments go into an addition. Where others write there at the same time, it goes by what
 * they have written, for which `readAnew` reads the registry. Returns a line for the user.
 */
export async function adopt(
  registry: Registry,
  trial: Profile<'trial'>,
  reduction: Reduction,
  own: OwnRegistry,
  readAnew: () => Registry,
): Promise<Result<string, Problem>> {
  let now = registry;
  for (let attempt = 1; ; attempt++) {
    const adopted = await adoptInto(now, trial, reduction, own);
    if (adopted.ok || attempt === mostAttempts) return adopted;
    if (!['changedMeanwhile', 'fileExists'].includes(adopted.error.code)) return adopted;
    now = readAnew();
    const present = now.trial.get(trial.id);
    // The report that the user sees is of other readings.
    if (present === undefined || !isSameTrial(present, trial)) return adopted;
  }
}

function isSameTrial(one: Profile<'trial'>, other: Profile<'trial'>): boolean {
  const textOf = ({ attachment }: Profile<'trial'>) => (attachment?.ok ? attachment.source.text : null);
  return one.source.text === other.source.text && textOf(one) === textOf(other);
}

async function adoptInto(
  registry: Registry,
  trial: Profile<'trial'>,
  reduction: Reduction,
  own: OwnRegistry,
): Promise<Result<string, Problem>> {
  const { folder, cwd } = own;
  const adopted = adoptedFile(registry, trial, reduction, {
    isOwn: (path) => resolve(cwd, path).startsWith(folder + sep),
    schemaFrom: (path) => schemaPathFrom(resolve(folder, path, '..'), folder, 'addition.schema.json'),
  });
  if (!adopted.ok) return adopted;
  const file = adopted.value;
  if (file.change === 'edited') return write(file.source, file.text, cwd);
  const made = await writeNewFile(folder, file);
  if (!made.ok) return made;
  const shown = relative(cwd, resolve(folder, file.path)).replaceAll('\\', '/');
  return success(`Wrote the limit into ${shown}, which adds to ${file.to}.`);
}

async function write(source: SourceText, text: string, cwd: string): Promise<Result<string, Problem>> {
  if (text === source.text) {
    tidyFolders([dirname(resolve(cwd, source.path))]);
    return success(`${source.path} states this limit already.`);
  }
  const written = await replaceText(source.path, { before: source.text, after: text }, cwd);
  if (!written.ok) return written;
  return success(`Wrote the limit into ${source.path}.`);
}
