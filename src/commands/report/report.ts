import { Command, Option } from 'commander';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { rememberOption } from '../open-memory.ts';
import { registryOption, rulePolicyOption, todayOption } from '../shared-options.ts';
import type { ReportOptions } from './run-report.ts';

export function reportCommand(cli: CliContext, exit: Exit): Command {
  return new Command('report')
    .summary('write the test report of a trial')
    .description(
      'Writes a test report of one trial in the order of ISO/IEC 17025:2017, 7.8.2, with conditions, readings, curve, results with expanded uncertainty, and the decision rule where a claim is judged. Conformity with that standard is not claimed. What is missing is named.',
    )
    .argument('<trial>', 'id of the trial, such as lantern-stagecraft-pla-230')
    .option('--laboratory <text>', 'name and address of the laboratory or workshop')
    .option('--place <text>', 'where the work was done')
    .option('--customer <text>', 'for whom the work was done')
    .option('--item-condition <text>', 'state in which the item came')
    .option('--received <text>', 'day on which the item was received')
    .option('--sampling <text>', 'how the item was sampled')
    .option('--deviations <text>', 'additions to the method, deviations from it, exclusions')
    .option('--authorised-by <text>', 'who authorises the report')
    .option('--external <text>', 'what comes from external providers')
    .addOption(
      new Option('--format <format>', 'form of the report')
        .choices(['html', 'text', 'markdown'])
        .default('html'),
    )
    .addOption(rulePolicyOption())
    .addOption(todayOption())
    .addOption(registryOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds report lantern-stagecraft-pla-230 > report.html
  meltbounds report lantern-stagecraft-pla-230 --laboratory "Lantern Street Props, 3 Lantern Street" --authorised-by "Ida Marsh" > report.html
  meltbounds report lantern-stagecraft-pla-230 --policy workshop --format text

Exit status: 0 written; 1 the readings cannot be reduced; 2 the command cannot run, for example because of an unknown id.`,
    )
    .action(async (trial: string, options: ReportOptions) => {
      const { runReport } = await import('./run-report.ts');
      return runReport(trial, options, cli, exit);
    });
}
