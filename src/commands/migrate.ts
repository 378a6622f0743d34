import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';

export function migrateCommand(cli: CliContext, exit: Exit): Command {
  return new Command('migrate')
    .summary('rewrite profiles of an older format in the present one')
    .description(
      'Finds profiles in an older format and rewrites them in the present one. Comments, order and everything else stay as they are; a file is replaced as a whole or not at all. Without a path it looks at the registry in this folder.',
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

Exit status: 0 every profile has the present format; 1 a profile still has an older one: with --dry-run, or because it has to be changed by hand; 2 the command cannot run.`,
    )
    .action(async (paths: readonly string[], { dryRun = false }: { readonly dryRun?: boolean }) => {
      const { runMigrate } = await import('./run-migrate.ts');
      return runMigrate(paths, dryRun, cli, exit);
    });
}
