import { formatMatchAsJson } from '../decisions/match/match-as-json.ts';
import { matchDocument } from '../decisions/match/match-document.ts';
import { matchRegistry } from '../decisions/match/match-registry.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { openRegistry, type RegistryOptions } from './open-registry.ts';
import type { AnswerFormat } from './shared-options.ts';

export interface MatchOptions extends RegistryOptions {
  readonly machine?: string;
  readonly format: AnswerFormat;
  readonly today?: string;
  readonly policy?: string;
}

export async function runMatch(
  filament: string | undefined,
  options: MatchOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const { machine, policy, format, today = cli.today() } = options;
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trust } = opened.value;
  const result = matchRegistry(registry, {
    today,
    ...(filament !== undefined && { filament }),
    ...(machine !== undefined && { machine }),
    ...(policy !== undefined && { policy }),
  });
  if (!result.ok) return exit.cannotRun(result.error);
  const trusted = trust(today);
  if (!trusted.ok) return exit.cannotRun(trusted.error);
  cli.out(
    format === 'json'
      ? formatMatchAsJson(result.value)
      : formatDocument(matchDocument(result.value), format, cli),
  );
}
