import { rememberReductions } from '../bench/reduce-trial.ts';
import { loadFolders } from '../host/load-registry.ts';
import { registryFolders } from '../host/registry-folders.ts';
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
  /** To be asked before anything is said: whether a remembered reduction, of a few that are computed again, is wrong. */
  readonly trust: (today: string) => Result<null, Problem<'misremembered'>>;
}

/** Reads the registries that a command names, else those that package.json does, else the one in this folder. */
export async function openRegistry(
  cli: CliContext,
  { registry: named, remember }: RegistryOptions,
): Promise<Result<OpenRegistry, Problem>> {
  const folders = registryFolders(named, cli.cwd);
  if (!folders.ok) return folders;
  const memory = await openMemory(cli, remember, folders.value);
  if (!memory.ok) return memory;
  const { registry } = loadFolders(folders.value, cli.cwd);
  rememberReductions(registry, memory.value);
  return success({ registry, trust: (today) => trust(memory.value, today) });
}

/** Whether what is remembered can be trusted, as far as a few results that are computed again tell. */
export function trust(memory: ResultMemory, today: string): Result<null, Problem<'misremembered'>> {
  const wrong = memory.differing(today);
  if (wrong.length === 0) return success(null);
  return refusal(
    'misremembered',
    `The reduction of ${wrong.join(', ')} that an earlier run left behind is not what the readings give now`,
    'It has been replaced. Use --no-remember to have everything computed again, and find out who writes to the folder of remembered results.',
  );
}
