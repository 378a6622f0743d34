import { Command, Option } from 'commander';
import { methodNames } from '../../bench/method-facts.ts';
import { newKinds } from '../../registry/kind.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { decimalOption, workbookSheetOption } from '../reading-options.ts';
import { registryOption } from '../shared-options.ts';
import type { NewOptions } from './new-profile.ts';

export function newCommand(cli: CliContext, exit: Exit): Command {
  return new Command('new')
    .summary('start a profile: asks, or takes flags, and writes an annotated file')
    .description(
      'Writes a new profile into the registry, with the meaning of every key, its allowed values and an example. In a terminal it asks for mandatory values; keys left open become comments. It never overwrites a file.',
    )
    .argument('<kind>', `what to start: ${newKinds.join(', ')}`)
    .argument('[id]', 'its id, such as ashgrove/stagecraft-pla; the place of the file follows from it')
    .addOption(
      new Option(
        '--set <key=value>',
        'answer a key, may be repeated: diameter="1.75 mm", envelope.x="300 mm", hotEnds.nozzles.material=brass; stated values name the data sheet as their source',
      )
        .argParser((pair: string, earlier: readonly string[]) => [...earlier, pair])
        .default([], 'nothing'),
    )
    .option(
      '--from <sheet>',
      'start a trial from a bench sheet (CSV or .xlsx), which is copied beside it as plain CSV',
    )
    .addOption(
      new Option(
        '--method <name>',
        'bench method of a trial; what it needs becomes mandatory (default: the one whose columns the sheet has)',
      ).choices(methodNames),
    )
    .addOption(decimalOption())
    .addOption(workbookSheetOption())
    .option('--inline', 'with --from: write the readings into the trial instead')
    .option('--no-ask', 'ask nothing, even on a terminal')
    .option('--dry-run', 'print the file instead of writing it')
    .addOption(registryOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds new filament
  meltbounds new filament oakhollow/tulip-petg --set polymer=PET-G --set "density=1.27 g/cm3"
  meltbounds new trial lantern-tulip-petg-240 --from ladder.csv --set machine=brackwater/lantern --set nozzle=hs-0.6
  meltbounds new trial lantern-sound --method soundLevel
  meltbounds new machine ferrywright/punt --dry-run

Exit status: 0 profile written or printed; 2 an answer is missing or wrong, or the file exists already.`,
    )
    .action(async (kind: string, id: string | undefined, options: NewOptions) => {
      const { runNew } = await import('./run-new.ts');
      return runNew(kind, id, options, cli, exit);
    });
}
