import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import type { IndexOptions } from './run-index.ts';

export function indexCommand(cli: CliContext, exit: Exit): Command {
  return new Command('index')
    .summary('list the profiles with their digests, or verify a copy against such a list')
    .description(
      'Writes an index of a registry: kind, id, version, path and SHA-256 of every profile and of the sheets of trials, sorted by path, as JSON. With --verify it compares a copy of the registry with an index instead, and lists what is missing, extra or changed.',
    )
    .argument('[folder]', 'folder of the registry', '.')
    .option('--out <file>', 'write the index there instead of on standard output')
    .option('--verify <file>', 'compare the registry with this index')
    .addHelpText(
      'after',
      `
Examples:
  meltbounds index --out index.json
  meltbounds index mirror/profiles --verify index.json

Exit status: 0 index written, or no differences found; 1 differences found, or a profile has errors of form; 2 the command cannot run.`,
    )
    .action(async (folder: string, options: IndexOptions) => {
      const { runIndex } = await import('./run-index.ts');
      return runIndex(folder, options, cli, exit);
    });
}
