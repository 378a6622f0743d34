import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { rememberOption } from './open-memory.ts';
import type { SiteOptions } from './run-site.ts';
import { registryOption, todayOption } from './shared-options.ts';

export function siteCommand(cli: CliContext, exit: Exit): Command {
  return new Command('site')
    .summary('write the registry as a static catalogue')
    .description(
      'Writes a page for every pairing with its card, every machine, filament, trial, rule and source, with the data beside each. The pages need no script and no network, and work from any folder. Only files that have changed are written; pages of what is gone are removed.',
    )
    .requiredOption('--out <folder>', 'folder for the catalogue')
    .addOption(todayOption())
    .addOption(registryOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds site --out public
  meltbounds site --out public --registry profiles --today 2026-11-25

Exit status: 0 catalogue written; 2 the command cannot run.`,
    )
    .action(async (options: SiteOptions) => {
      const { runSite } = await import('./run-site.ts');
      return runSite(options, cli, exit);
    });
}
