import { formatClaimsAsJson } from '../decisions/claims/claims-as-json.ts';
import { claimsDocument } from '../decisions/claims/claims-document.ts';
import { judgeClaims } from '../decisions/claims/judge-claims.ts';
import { loadRegistry } from '../host/load-registry.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import type { AnswerFormat } from './shared-options.ts';

export interface ClaimsOptions {
  readonly format: AnswerFormat;
  readonly today?: string;
  readonly registry: readonly string[];
}

export async function runClaims(
  machine: string,
  { format, today, registry: asked }: ClaimsOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const loaded = loadRegistry(asked, cli.cwd);
  if (!loaded.ok) return exit.cannotRun(loaded.error);
  const { registry } = loaded.value;
  const report = judgeClaims(registry, machine, { today: today ?? cli.today() });
  if (!report.ok) return exit.cannotRun(report.error);
  cli.out(
    format === 'json'
      ? formatClaimsAsJson(report.value)
      : formatDocument(claimsDocument(report.value), format, cli),
  );
}
