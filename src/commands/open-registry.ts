import { rememberReductions } from '../bench/reduce-trial.ts';
import { filesOfFolders } from '../host/load-registry.ts';
import { registryFolders } from '../host/registry-folders.ts';
import { type FileWithSiblings, linkFiles } from '../registry/load-files.ts';
import { type ProfileMemory, profileMemory } from '../registry/profile-memory.ts';
import type { Registry } from '../registry/registry.ts';
import type { ResultMemory } from '../registry/result-memory.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import type { CliContext } from './cli-context.ts';
import { openMemory } from './open-memory.ts';

/** Which registries a command reads, and whether it looks results up. */
export interface RegistryOptions {
  readonly registry: readonly string[];
  readonly remember: boolean;
}

/** A registry whose trials are looked up in what earlier runs have left behind, where they have. */
export interface OpenRegistry {
  readonly registry: Registry;
  /** What earlier runs have left behind, and what this one will. */
  readonly memory: ResultMemory;
  /** To be asked before anything is said: whether what is remembered, of a little that is computed again, is wrong. */
  readonly trust: (today: string) => Result<null, Problem<'misremembered'>>;
}

/**
 * Reads the registries that a command names, else those that package.json does, else the one in this folder; and with them
 * profile files from outside of them.
 */
export async function openRegistry(
  cli: CliContext,
  { registry: named, remember }: RegistryOptions,
  loose: readonly string[] = [],
): Promise<Result<OpenRegistry, Problem>> {
  const folders = registryFolders(named, cli.cwd);
  if (!folders.ok) return folders;
  const memory = await openMemory(cli, remember, folders.value);
  if (!memory.ok) return memory;
  const files = filesOfFolders(folders.value, loose, cli.cwd);
  const profiles = memory.value.isKept ? profileMemory(files, memory.value) : null;
  const { registry } = linkFiles(files, profiles?.recalling());
  profiles?.keep();
  rememberReductions(registry, memory.value);
  return success({
    registry,
    memory: memory.value,
    trust: (today) => {
      const trusted = trust(memory.value, today);
      return trusted.ok && profiles !== null ? trustProfiles(profiles, files, today) : trusted;
    },
  });
}

/** Whether remembered reductions can be trusted, as far as a few results that are computed again tell. */
export function trust(memory: ResultMemory, today: string): Result<null, Problem<'misremembered'>> {
  const wrong = memory.differing(today);
  if (wrong.length === 0) return success(null);
  return misremembered(
    `The reduction of ${wrong.join(', ')} that an earlier run left behind is not what the readings give now`,
  );
}

/** Whether remembered profiles can be, as far as a few that are parsed again tell; where not, all are parsed again. */
function trustProfiles(
  profiles: ProfileMemory,
  files: readonly FileWithSiblings[],
  today: string,
): Result<null, Problem<'misremembered'>> {
  const wrong = profiles.differing(today);
  if (wrong.length === 0) return success(null);
  linkFiles(files, profiles.recalling());
  profiles.keep();
  return misremembered(
    `What an earlier run left behind about ${wrong.join(', ')} is not what stands there now`,
  );
}

export function misremembered(message: string): Result<never, Problem<'misremembered'>> {
  return refusal(
    'misremembered',
    message,
    'It has been replaced. Use --no-remember to have everything computed again, and find out who writes to the folder of remembered results.',
  );
}
