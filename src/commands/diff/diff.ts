import { Command, Option } from 'commander';
import { diffFormats } from '../../report/report-formats.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { rememberOption } from '../open-memory.ts';
import { registryOption } from '../shared-options.ts';
import type { DiffOptions } from './run-diff.ts';

export function diffCommand(cli: CliContext, exit: Exit): Command {
  return new Command('diff')
    .summary('show what a change means, and which new versions it needs')
    .description(
      'Compares two versions of a registry: limits and temperatures, table values, profiles added or removed, and whether the version of each profile was raised enough. A lower limit, a narrower range or a removed id or nozzle is a major change: tables made from the old version are no longer safe. A higher limit or something new is a minor one, all else a patch.',
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

Exit status: 0 every version is high enough; 1 a version is too low, or a trial was changed; 2 the versions cannot be compared.`,
    )
    .action(async (base: string, head: string | undefined, options: DiffOptions) => {
      const { runDiff } = await import('./run-diff.ts');
      return runDiff(base, head, options, cli, exit);
    });
}
