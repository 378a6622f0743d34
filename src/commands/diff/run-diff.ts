import { rememberReductions } from '../../bench/reduce-trial.ts';
import { diffRegistries } from '../../decisions/diff/diff-registries.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { formatDiff } from '../../report/diff/diff-formats.ts';
import type { DiffFormat } from '../../report/report-formats.ts';
import { type CliContext, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { openMemory } from '../open-memory.ts';
import { trust } from '../open-registry.ts';
import { diffSide } from './diff-side.ts';

export interface DiffOptions {
  readonly format: DiffFormat;
  readonly registry: readonly string[];
  readonly remember: boolean;
}

export async function runDiff(
  baseWord: string,
  headWord: string | undefined,
  { format, registry, remember }: DiffOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const { cwd, out, progress = () => undefined } = cli;
  const folders = registryFolders(registry, cwd);
  const base = await diffSide(baseWord, folders, cwd);
  if (!base.ok) return exit.cannotRun(base.error);
  const head = await diffSide(headWord, folders, cwd);
  if (!head.ok) return exit.cannotRun(head.error);
  const memory = await openMemory(cli, remember, [...base.value.folders, ...head.value.folders]);
  if (!memory.ok) return exit.cannotRun(memory.error);
  for (const { loaded } of [base.value, head.value]) rememberReductions(loaded.registry, memory.value);
  progress('Comparing profiles and tables …');
  const found = diffRegistries(base.value.loaded, head.value.loaded);
  const trusted = trust(memory.value, cli.today());
  progress('');
  if (!trusted.ok) return exit.cannotRun(trusted.error);
  const textOf = (file: string) => head.value.loaded.texts.get(file);
  out(formatDiff[format]({ diff: found, base: base.value.name, head: head.value.name, textOf }, cli), {
    workflowCommands: format === 'annotations',
  });
  exit.with(found.findings.length > 0 ? exitStatus.findings : exitStatus.clean);
}
