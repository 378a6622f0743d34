import { Command, Option } from 'commander';
import { diffFormats } from '../../report/report-formats.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { rememberOption } from '../open-memory.ts';
import { registryOption } from '../shared-options.ts';
import type { DiffOptions } from './run-diff.ts';

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
    .addOption(rememberOption())
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
    .action(async (base: string, head: string | undefined, options: DiffOptions) => {
      const { runDiff } = await import('./run-diff.ts');
      return runDiff(base, head, options, cli, exit);
    });
}
