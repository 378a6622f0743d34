import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import type { InitOptions } from './run-init.ts';

export function initCommand(cli: CliContext, exit: Exit): Command {
  return new Command('init')
    .summary('create your own registry on top of the published one')
    .description(
      'Writes what a registry of your own needs: a folder for profiles with house rules to start from, package.json, checks for the code host and for any shell, templates for pull requests and issues, editor settings. Existing files stay as they are.',
    )
    .argument('[folder]', 'folder to write to, created if missing (default: this folder)')
    .option('--dry-run', 'list the files instead of writing them')
    .addHelpText(
      'after',
      `
Examples:
  meltbounds init our-limits
  meltbounds init --dry-run

Exit status: 0 files written or listed; 2 the files cannot be written.`,
    )
    .action(async (folder: string | undefined, options: InitOptions, command: Command) => {
      const { runInit } = await import('./run-init.ts');
      return runInit(folder, options, command.parent?.version() ?? '', cli, exit);
    });
}
