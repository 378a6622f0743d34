import { Command, Option } from 'commander';
import { methodNames, usualMethod } from '../bench/method-facts.ts';
import { ladderSettingNames } from '../bench/setting-ladder/ladder-settings.ts';
import { checkedParts } from '../knowledge/part-offset.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { rememberOption } from './open-memory.ts';
import { decimalOption, workbookSheetOption } from './reading-options.ts';
import type { PlanOptions } from './run-plan.ts';
import { planFormats, registryOption, todayOption } from './shared-options.ts';

export function planCommand(cli: CliContext, exit: Exit): Command {
  return new Command('plan')
    .summary('plan the next bench run of a machine and a filament')
    .description(
      'Plans a bench run: the result to expect and why, the settings step by step, filament and time needed, cautions, and an empty trial to fill in.',
    )
    .argument('<machine>', 'id of the machine, such as brackwater/lantern')
    .argument('<filament>', 'id of the filament, such as ashgrove/stagecraft-pla')
    .option(
      '--nozzle <id>',
      'nozzle of the machine (default: one with a measured limit, else the first that fits)',
    )
    .option('--method <name>', `bench method: ${methodNames.join(', ')}`, usualMethod)
    .option('--setting <name>', `what a settingLadder raises: ${ladderSettingNames.join(', ')}`)
    .option('--part <name>', `what a setPointCheck checks: ${checkedParts.join(', ')}`)
    .option(
      '--temperature <temperature>',
      'nozzle temperature, such as "230 Cel" (default: that of the claimed flow, else the middle of the window)',
    )
    .option('--resolution <mass>', 'smallest step of the scale, such as "0.001 g" (default 0.01 g)')
    .addOption(
      new Option(
        '--format <format>',
        'form of the plan: text, a Markdown sheet to fill in by hand, the CSV sheet that reduce reads, the trial file',
      )
        .choices(planFormats)
        .default('text'),
    )
    .option(
      '--after <sheet>',
      'what has been weighed of a flow ladder so far, a bench sheet or a trial: says which piece to feed next, or to stop',
    )
    .option(
      '--width <share>',
      'with --after: width of the 95 % interval at which to stop, such as "6 %" (default: that of the policy, else 5 %)',
    )
    .option(
      '--policy <id>',
      'with --after: house rules with the width and the deficit (default: the only ones)',
    )
    .option(
      '--tolerance <share>',
      'with --after a bare sheet: accepted flow deficit (default: that of the policy, else 5 %)',
    )
    .option(
      '--halted <flow>',
      'with --after a bare sheet: flow at which the run was halted, such as "46 mm3/s"',
    )
    .addOption(decimalOption())
    .addOption(workbookSheetOption())
    .option('--out <folder>', 'write bench sheet, CSV sheet and trial file there instead')
    .addOption(registryOption())
    .addOption(rememberOption())
    .addOption(todayOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds plan brackwater/lantern ashgrove/stagecraft-petg
  meltbounds plan brackwater/lantern ashgrove/stagecraft-pla --nozzle hs-0.8 --resolution "0.001 g"
  meltbounds plan tollwick/steeple ashgrove/stagecraft-petg --temperature "250 Cel" --format markdown > sheet.md
  meltbounds plan tollwick/steeple ashgrove/stagecraft-petg --out profiles/trials/2026
  meltbounds plan tollwick/steeple ashgrove/stagecraft-petg --after ladder.csv --width "6 %"

Exit status: 0 plan written; 2 no plan, for example because the nozzle does not fit the filament.`,
    )
    .action(async (machine: string, filament: string, options: PlanOptions) => {
      const { runPlan } = await import('./run-plan.ts');
      return runPlan(machine, filament, options, cli, exit);
    });
}
