import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';

export function migrateCommand(cli: CliContext, exit: Exit): Command {
  return new Command('migrate')
    .summary('bring profiles of an older format into the present one')
    .description(
      'Finds profiles that are written in an older shape of the format, and writes them in the present one. Comments, order and everything else stay as they are; a file is replaced as a whole or not at all. Without a path it looks at the registry in this folder.',
    )
    .argument('[paths...]', 'files or folders to look at')
    .option('--dry-run', 'print what would change, and change nothing')
    .addHelpText(
      'after',
      `
Examples:
  meltbounds migrate --dry-run
  meltbounds migrate
  meltbounds migrate profiles/trials

Exit status: 0 nothing is left in an older shape; 1 something is: with --dry-run, or in a file that has to be changed by hand; 2 it cannot run.`,
    )
    .action(async (paths: readonly string[], { dryRun = false }: { readonly dryRun?: boolean }) => {
      const { runMigrate } = await import('./run-migrate.ts');
      return runMigrate(paths, dryRun, cli, exit);
    });
}
