import { Command, Option } from 'commander';
import { diffRegistries } from '../../decisions/diff/diff-registries.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { type DiffFormat, diffFormats, formatDiff } from '../../report/diff/diff-formats.ts';
import { type CliContext, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { registryOption } from '../shared-options.ts';
import { diffSide } from './diff-side.ts';

interface DiffOptions {
  readonly format: DiffFormat;
  readonly registry: readonly string[];
}

export function diffCommand(cli: CliContext, exit: Exit): Command {
  return new Command('diff')
    .summary('say what a change means, and which versions it needs')
    .description(
      'Compares two versions of a registry: limits and temperatures, cells of tables, profiles that came or went, and whether the version of each profile has moved far enough. A limit that goes down, a range that narrows, an id or nozzle that goes is a major change: tables made by the old version are no longer safe. A limit that goes up or something new is a minor one, all else a patch.',
    )
    .argument('<base>', 'branch, tag or commit of git, or folder of a registry')
    .argument('[head]', 'the same (default: the registry as it is in the working tree)')
    .addOption(new Option('--format <format>', 'form of the report').choices(diffFormats).default('text'))
    .addOption(registryOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds diff main
  meltbounds diff v1.2.0 v1.3.0 --format json
  meltbounds diff origin/main --format markdown > comment.md
  meltbounds diff ../old/profiles ../new/profiles

Exit status: 0 every version has moved far enough, 1 one has not or a record was changed, 2 it cannot compare.`,
    )
    .action((base: string, head: string | undefined, options: DiffOptions) =>
      diff(base, head, options, cli, exit),
    );
}

async function diff(
  baseWord: string,
  headWord: string | undefined,
  { format, registry }: DiffOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const { cwd, out, progress = () => undefined } = cli;
  const folders = registryFolders(registry, cwd);
  const base = await diffSide(baseWord, folders, cwd);
  if (!base.ok) return exit.cannotRun(base.error);
  const head = await diffSide(headWord, folders, cwd);
  if (!head.ok) return exit.cannotRun(head.error);
  progress('Comparing profiles and tables …');
  const found = diffRegistries(base.value.loaded, head.value.loaded);
  progress('');
  const textOf = (file: string) => head.value.loaded.texts.get(file);
  out(formatDiff[format]({ diff: found, base: base.value.name, head: head.value.name, textOf }, cli));
  exit.with(found.findings.length > 0 ? exitStatus.findings : exitStatus.clean);
}
