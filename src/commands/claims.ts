import { Command } from 'commander';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { rememberOption } from './open-memory.ts';
import type { ClaimsOptions } from './run-claims.ts';
import { formatOption, registryOption, rulePolicyOption, todayOption } from './shared-options.ts';

export function claimsCommand(cli: CliContext, exit: Exit): Command {
  return new Command('claims')
    .summary("compare the claims of a machine's data sheet with measurements")
    .description(
      "Compares every claim of a machine's data sheet, except the price, with what was measured: held, not contradicted, not reached (by how much), untested, or not reachable in principle, with the conditions of each test, by the decision rule of a policy.",
    )
    .argument('<machine>', 'id of the machine, such as brackwater/lantern')
    .addOption(rulePolicyOption())
    .addOption(formatOption('form of the result'))
    .addOption(todayOption())
    .addOption(registryOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds claims brackwater/lantern
  meltbounds claims brackwater/lantern --policy prototype
  meltbounds claims tollwick/steeple --format markdown > steeple-claims.md

Exit status: 0 compared, whatever the outcome; 2 the command cannot run, for example because of an unknown id.`,
    )
    .action(async (machine: string, options: ClaimsOptions) => {
      const { runClaims } = await import('./run-claims.ts');
      return runClaims(machine, options, cli, exit);
    });
}
