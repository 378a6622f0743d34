import { Command } from 'commander';
import { formatClaimsAsJson } from '../decisions/claims/claims-as-json.ts';
import { claimsDocument } from '../decisions/claims/claims-document.ts';
import { judgeClaims } from '../decisions/claims/judge-claims.ts';
import { loadRegistry } from '../host/load-registry.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { type AnswerFormat, formatOption, registryOption, todayOption } from './shared-options.ts';

interface ClaimsOptions {
  readonly format: AnswerFormat;
  readonly today?: string;
  readonly registry: readonly string[];
}

export function claimsCommand(cli: CliContext, exit: Exit): Command {
  return new Command('claims')
    .summary("compare the claims of a machine's data sheet with measurements")
    .description(
      "Compares every claim of a machine's data sheet, except the price, with what was measured: held, not reached (by how much), untested, or not reachable in principle, with the conditions of each test.",
    )
    .argument('<machine>', 'id of the machine, such as brackwater/lantern')
    .addOption(formatOption('form of the result'))
    .addOption(todayOption())
    .addOption(registryOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds claims brackwater/lantern
  meltbounds claims tollwick/steeple --format markdown > steeple-claims.md

Exit status: 0 judged, whatever the verdicts, 2 cannot be judged.`,
    )
    .action((machine: string, { format, today, registry: asked }: ClaimsOptions) => {
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
    });
}
