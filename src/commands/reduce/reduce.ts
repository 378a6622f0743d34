import { Command } from 'commander';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { formatOption, registryOption } from '../shared-options.ts';
import { pairingOptions, plotOptions, sheetOptions } from './reduce-options.ts';
import type { ReduceOptions } from './run-reduce.ts';

export function reduceCommand(cli: CliContext, exit: Exit): Command {
  const command = new Command('reduce')
    .summary('reduce a bench trial to its results with 95 % intervals')
    .description(
      'Turns the readings of a trial, or of a bare bench sheet (CSV or .xlsx), into a limit with its 95 % coverage interval. With a machine and a filament it gathers their flow ladders and gives the limit against the nozzle temperature.',
    )
    .usage('[options] <trial or sheet.csv>\n       meltbounds reduce [options] <machine> <filament>')
    .argument(
      '<trial>',
      'id of a trial of the registry, path of a bench sheet (CSV or .xlsx), or id of a machine',
    )
    .argument('[filament]', 'with a machine: id of the filament')
    .addOption(formatOption('form of the result'))
    .option(
      '--adopt',
      'write the limit into the profile of the filament, or a sound level into that of the machine',
    )
    .addOption(registryOption());
  for (const option of [...plotOptions(), ...pairingOptions(), ...sheetOptions()]) command.addOption(option);
  return command
    .addHelpText(
      'after',
      `
Examples:
  meltbounds reduce lantern-stagecraft-pla-230
  meltbounds reduce lantern-stagecraft-pla-230 --adopt
  meltbounds reduce lantern-stagecraft-pla-230 --plot ladder.svg
  meltbounds reduce lantern-stagecraft-pla-230 --plot -
  meltbounds reduce brackwater/lantern ashgrove/stagecraft-pla --nozzle hs-0.6 --at "235 Cel"
  meltbounds reduce spool.csv --method diameterSurvey --diameter "1.75 mm" --resolution "0.001 mm"
  meltbounds reduce dryer.csv --method dryingCurve --residual "0.02 %" --reel "180 g"
  meltbounds reduce ladder.xlsx --sheet Tuesday --diameter "1.75 mm" --density "1.24 g/cm3"
  meltbounds reduce ladder.csv --method flowLadder --diameter "1.75 mm" --density "1.24 g/cm3" --tolerance "5 %" --resolution "0.01 g" --format json

Exit status: 0 reduced; 1 the readings cannot be reduced; 2 the command cannot run.`,
    )
    .action(async (trial: string, filament: string | undefined, options: ReduceOptions) => {
      const { runReduce } = await import('./run-reduce.ts');
      return runReduce(trial, filament, options, cli, exit);
    });
}
