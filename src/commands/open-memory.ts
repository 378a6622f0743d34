import { sep } from 'node:path';
import { Option } from 'commander';
import { type ResultMemory, resultMemory } from '../registry/result-memory.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import type { CliContext } from './cli-context.ts';

/** `--no-remember`, for those who want every number computed in this run. */
export function rememberOption(): Option {
  return new Option(
    '--no-remember',
    'recompute everything instead of using the results of earlier runs (MELTBOUNDS_CACHE names their folder)',
  );
}

/**
 * The memory that a command looks results up in. Registries come from strangers, so one that lies within any of the
 * folders that are read is refused.
 */
export async function openMemory(
  { results }: CliContext,
  remember: boolean,
  registries: readonly string[],
): Promise<Result<ResultMemory, Problem<'untrustedFolder'>>> {
  if (!remember || results === undefined) return success(resultMemory(null, ''));
  const { folder, store, program } = await results();
  const holder = registries.find((registry) => `${folder}${sep}`.startsWith(`${registry}${sep}`));
  if (holder === undefined) return success(resultMemory(store, program));
  return refusal(
    'untrustedFolder',
    `The folder for remembered results, ${folder}, lies inside of the registry ${holder}, and what a registry brings is not trusted`,
    'Name another one in MELTBOUNDS_CACHE, or use --no-remember.',
  );
}
