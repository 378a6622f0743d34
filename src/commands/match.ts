import { Command } from 'commander';
import { formatMatchAsJson } from '../decisions/match/match-as-json.ts';
import { matchDocument } from '../decisions/match/match-document.ts';
import { matchRegistry } from '../decisions/match/match-registry.ts';
import { loadRegistry } from '../host/load-registry.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { type AnswerFormat, formatOption, registryOption, todayOption } from './shared-options.ts';

interface MatchOptions {
  readonly machine?: string;
  readonly format: AnswerFormat;
  readonly today?: string;
  readonly registry: readonly string[];
}

export function matchCommand(cli: CliContext, exit: Exit): Command {
  return new Command('match')
    .summary('say which machines suit which filaments, and why')
    .description(
      'Judges every machine against every filament: suits, suits with limits or unsuitable, with every reason and its numbers. For one filament the machines come ranked.',
    )
    .argument('[filament]', 'id of a filament to rank machines for, such as ashgrove/stagecraft-petg')
    .option('--machine <id>', 'judge this machine only, such as brackwater/lantern')
    .addOption(formatOption('form of the result'))
    .addOption(todayOption())
    .addOption(registryOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds match
  meltbounds match quillmere/rigging-abs
  meltbounds match --machine brackwater/lantern --format markdown > lantern.md

Exit status: 0 judged, 2 it cannot be judged.`,
    )
    .action((filament: string | undefined, { machine, format, today, registry: asked }: MatchOptions) => {
      const loaded = loadRegistry(asked, cli.cwd);
      if (!loaded.ok) return exit.cannotRun(loaded.error);
      const { registry } = loaded.value;
      const result = matchRegistry(registry, {
        today: today ?? cli.today(),
        ...(filament !== undefined && { filament }),
        ...(machine !== undefined && { machine }),
      });
      if (!result.ok) return exit.cannotRun(result.error);
      cli.out(
        format === 'json'
          ? formatMatchAsJson(result.value)
          : formatDocument(matchDocument(result.value), format, cli),
      );
    });
}
