import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { rememberOption } from './open-memory.ts';
import type { MatchOptions } from './run-match.ts';
import { formatOption, registryOption, rulePolicyOption, todayOption } from './shared-options.ts';

export function matchCommand(cli: CliContext, exit: Exit): Command {
  return new Command('match')
    .summary('show which machines suit which filaments, and why')
    .description(
      'Says for every machine and filament whether they suit each other, suit with limits or are unsuitable, with every reason and its numbers. For one filament, the machines are ranked.',
    )
    .argument('[filament]', 'id of a filament to rank machines for, such as ashgrove/stagecraft-petg')
    .option('--machine <id>', 'judge this machine only, such as brackwater/lantern')
    .addOption(rulePolicyOption())
    .addOption(formatOption('form of the result'))
    .addOption(todayOption())
    .addOption(registryOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds match
  meltbounds match quillmere/rigging-abs
  meltbounds match --machine brackwater/lantern --format markdown > lantern.md

Exit status: 0 judged, whatever the verdicts; 2 the command cannot run, for example because of an unknown id.`,
    )
    .action(async (filament: string | undefined, options: MatchOptions) => {
      const { runMatch } = await import('./run-match.ts');
      return runMatch(filament, options, cli, exit);
    });
}
