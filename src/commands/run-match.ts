import { formatMatchAsJson } from '../decisions/match/match-as-json.ts';
import { matchDocument } from '../decisions/match/match-document.ts';
import { matchRegistry } from '../decisions/match/match-registry.ts';
import { loadRegistry } from '../host/load-registry.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import type { AnswerFormat } from './shared-options.ts';

export interface MatchOptions {
  readonly machine?: string;
  readonly format: AnswerFormat;
  readonly today?: string;
  readonly registry: readonly string[];
}

export async function runMatch(
  filament: string | undefined,
  { machine, format, today, registry: asked }: MatchOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
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
}
