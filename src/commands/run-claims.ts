import { formatClaimsAsJson } from '../decisions/claims/claims-as-json.ts';
import { claimsDocument } from '../decisions/claims/claims-document.ts';
import { judgeClaims } from '../decisions/claims/judge-claims.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { openRegistry, type RegistryOptions } from './open-registry.ts';
import type { AnswerFormat } from './shared-options.ts';

export interface ClaimsOptions extends RegistryOptions {
  readonly format: AnswerFormat;
  readonly today?: string;
  readonly policy?: string;
}

export async function runClaims(
  machine: string,
  options: ClaimsOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const { format, policy, today = cli.today() } = options;
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trust } = opened.value;
  const report = judgeClaims(registry, machine, { today, ...(policy !== undefined && { policy }) });
  if (!report.ok) return exit.cannotRun(report.error);
  const trusted = trust(today);
  if (!trusted.ok) return exit.cannotRun(trusted.error);
  cli.out(
    format === 'json'
      ? formatClaimsAsJson(report.value)
      : formatDocument(claimsDocument(report.value), format, cli),
  );
}
