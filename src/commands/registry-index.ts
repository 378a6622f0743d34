import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import type { IndexOptions } from './run-index.ts';

export function indexCommand(cli: CliContext, exit: Exit): Command {
  return new Command('index')
    .summary('list the profiles with their digests, or verify a copy by such a list')
    .description(
      'Writes an index of a registry: kind, id, version, path and SHA-256 of every profile and of the sheets of trials, sorted by path, as JSON. With --verify it holds a copy of the registry against an index instead, and lists what is missing, extra or altered.',
    )
    .argument('[folder]', 'folder of the registry', '.')
    .option('--out <file>', 'write the index there instead of on standard output')
    .option('--verify <file>', 'hold the registry against this index')
    .addHelpText(
      'after',
      `
Examples:
  meltbounds index --out index.json
  meltbounds index mirror/profiles --verify index.json

Exit status: 0 written, or nothing differs; 1 something differs, or a profile has errors of form; 2 it cannot run.`,
    )
    .action(async (folder: string, options: IndexOptions) => {
      const { runIndex } = await import('./run-index.ts');
      return runIndex(folder, options, cli, exit);
    });
}
