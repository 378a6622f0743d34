import { Command, InvalidArgumentError, Option } from 'commander';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { rememberOption } from '../open-memory.ts';
import { registryOption, todayOption } from '../shared-options.ts';
import type { SiteOptions } from './run-site.ts';

export function siteCommand(cli: CliContext, exit: Exit): Command {
  return new Command('site')
    .summary('write the registry as a static catalogue')
    .description(
      'Writes a page for every pairing with its card, every machine, filament, trial, rule and source, with the data beside each. The pages need no script and no network, and work from any folder. Only files that have changed are written; pages of what is gone are removed.',
    )
    .requiredOption('--out <folder>', 'folder for the catalogue')
    .addOption(
      new Option(
        '--policy <id>',
        'house rules under which pairings have pages; can be repeated (default: all, as far as there is room)',
      )
        .default([])
        .argParser((id: string, before: readonly string[]) => [...before, id]),
    )
    .option('--watch', 'serve it on this machine alone, and write again what changes, until Ctrl+C')
    .addOption(portOption())
    .addOption(todayOption())
    .addOption(registryOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds site --out public
  meltbounds site --out public --registry profiles --today 2026-11-25
  meltbounds site --out public --watch

Exit status: 0 catalogue written; 2 the command cannot run.`,
    )
    .action(async (options: SiteOptions) => {
      const { runSite } = await import('./run-site.ts');
      return runSite(options, cli, exit);
    });
}

const usualPort = 8340;
const highestPort = 65_535;

function portOption(): Option {
  return new Option('--port <number>', 'with --watch: the port to serve at; 0 takes any that is free')
    .default(usualPort)
    .argParser((text) => {
      if (/^\d{1,5}$/.test(text) && Number(text) <= highestPort) return Number(text);
      throw new InvalidArgumentError(`write a whole number up to ${highestPort}, for instance ${usualPort}.`);
    });
}
