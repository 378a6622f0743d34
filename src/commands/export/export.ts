import { Argument, Command, InvalidArgumentError, Option } from 'commander';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { rememberOption } from '../open-memory.ts';
import { registryOption, todayOption } from '../shared-options.ts';
import type { ExportCommandOptions } from './run-export.ts';

export function exportCommand(cli: CliContext, exit: Exit): Command {
  return new Command('export')
    .summary('write readings, limits and tables as Parquet, for analysis')
    .description(
      'Writes a whole registry as tables that any engine for data reads: readings, trials, results, limits, speeds and what each rests on, nozzles, filaments, claims and sources, as Parquet files, with datapackage.json, which describes every column and its unit. docs/how-to/ask-by-sql.md has questions to ask.',
    )
    .addArgument(new Argument('[folders...]', 'folders of registries, in place of --registry'))
    .requiredOption('--out <folder>', 'folder for the files')
    .option(
      '--licence <id>',
      'licence of the registry for datapackage.json, such as CC0-1.0 (default: none is named)',
      licenceArgument,
    )
    .addOption(
      new Option('--policy <id>', 'tables under these house rules only (default: under all)').conflicts(
        'tables',
      ),
    )
    .option('--no-tables', 'derive no tables, which of a large registry take most of the time')
    .addOption(todayOption())
    .addOption(registryOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds export --out export
  meltbounds export profiles --out export --licence CC0-1.0
  meltbounds export --out export --policy workshop

Exit status: 0 files written; 2 the command cannot run.`,
    )
    .action(async (folders: string[], options: ExportCommandOptions, command: Command) => {
      const { runExport } = await import('./run-export.ts');
      const program = `meltbounds version ${command.parent?.version() ?? ''}`;
      return runExport(folders, options, program, cli, exit);
    });
}

/** An identifier of the SPDX list has no other characters. */
function licenceArgument(text: string): string {
  if (/^[A-Za-z0-9.+-]{1,100}$/.test(text)) return text;
  throw new InvalidArgumentError('Write the identifier of the licence in the SPDX list, such as CC0-1.0.');
}
