import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { Command } from 'commander';
import type { BenchProblem } from '../../bench/bench-problem.ts';
import { reduceTrial } from '../../bench/reduce-trial.ts';
import type { Reduction } from '../../bench/reduction.ts';
import type { RunEvent } from '../../bench/run-event.ts';
import { loadFolders } from '../../host/load-registry.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import type { Profile } from '../../registry/profile.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { formatReductionAsJson } from '../../report/reduction/reduction-as-json.ts';
import { type ReductionHeading, reductionDocument } from '../../report/reduction/reduction-document.ts';
import { reductionPlot } from '../../report/reduction/reduction-plot.ts';
import type { Problem, Result } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import { formatDocument } from '../../units/format-document.ts';
import { inPrint } from '../../units/in-print.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { type CliContext, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { formatOption, registryOption } from '../shared-options.ts';
import { usage } from '../usage.ts';
import { adopt } from './adopt.ts';
import { type PairingOptions, pairingOptions, runPairing, wantsPairing } from './reduce-pairing.ts';
import { reduceSheet, type SheetOptions, sheetOptions } from './reduce-sheet.ts';
import { checkPlotRequest, plotOptions, showPlot } from './write-plot.ts';

type ReduceOptions = SheetOptions & PairingOptions & { readonly adopt?: boolean };

export function reduceCommand(cli: CliContext, exit: Exit): Command {
  const command = new Command('reduce')
    .summary('reduce a bench trial to its results with 95 % intervals')
    .description(
      'Turns the readings of a trial, or of a bare CSV bench sheet, into a limit with its 95 % coverage interval. With a machine and a filament it gathers their flow ladders and gives the limit against the nozzle temperature.',
    )
    .usage('[options] <trial or sheet.csv>\n       meltbounds reduce [options] <machine> <filament>')
    .argument('<trial>', 'id of a trial of the registry, path of a CSV bench sheet, or id of a machine')
    .argument('[filament]', 'with a machine: id of the filament')
    .addOption(formatOption('form of the result'))
    .option('--adopt', 'write the limit into the profile of the filament, or of the machine for its sound')
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
  meltbounds reduce ladder.csv --method flowLadder --diameter "1.75 mm" --density "1.24 g/cm3" --tolerance "5 %" --resolution "0.01 g" --format json

Exit status: 0 reduced, 1 the readings cannot be reduced, 2 it cannot run.`,
    )
    .action((trial: string, filament: string | undefined, options: ReduceOptions) => {
      const plot = checkPlotRequest(options, cli.cwd);
      if (!plot.ok) return exit.cannotRun(plot.error);
      const misplaced = misplacedOption(filament, options);
      if (misplaced !== null) return exit.cannotRun(misplaced.error);
      if (filament !== undefined) return runPairing(trial, filament, options, cli, exit);
      return isSheet(trial, cli.cwd)
        ? runSheet(trial, options, cli, exit)
        : runTrial(trial, options, cli, exit);
    });
}

/** An option that belongs to another kind of subject than the one that is named. */
function misplacedOption(filament: string | undefined, options: ReduceOptions) {
  if (filament === undefined) {
    return wantsPairing(options)
      ? usage(
          '--nozzle, --at and --extrapolate belong to a machine with a filament',
          'A trial holds its own conditions; gather several with: meltbounds reduce MACHINE FILAMENT',
        )
      : null;
  }
  if (options.adopt)
    return usage('A line of several limits cannot be adopted', 'Adopt the limit of each trial by its id.');
  return options.method === undefined
    ? null
    : usage(
        '--method belongs to a bare CSV sheet',
        'The trials of a machine and a filament hold their own; leave it out.',
      );
}

function isSheet(trial: string, cwd: string): boolean {
  return /\.csv$/i.test(trial) || (trial.includes('/') && existsSync(resolve(cwd, trial)));
}

async function runSheet(path: string, options: ReduceOptions, cli: CliContext, exit: Exit): Promise<void> {
  if (options.adopt) {
    exit.cannotRun({
      message: 'A bare sheet names no filament to adopt the limit for',
      help: 'Add it to the registry as a trial and give the id of the trial.',
    });
    return;
  }
  const reduced = reduceSheet(path, options, cli.cwd);
  if (!reduced.ok) {
    exit.cannotRun(reduced.error);
    return;
  }
  const place = (row: number) => `${path}:${row}`;
  const heading = { title: path, subject: null, place, events: eventsOf(options) };
  await report(reduced.value, heading, options, cli, exit);
}

/** What the options say of how the run ended. */
function eventsOf({ halted }: SheetOptions): RunEvent[] {
  const flow = typeof halted === 'string' ? parseQuantity(halted, 'volumeFlow') : undefined;
  return flow?.ok ? [{ event: 'halted', commandedFlow: flow.value.value }] : [];
}

async function runTrial(id: string, options: ReduceOptions, cli: CliContext, exit: Exit): Promise<void> {
  const folders = registryFolders(options.registry, cli.cwd);
  if (!folders.ok) return exit.cannotRun(folders.error);
  const { registry } = loadFolders(folders.value, cli.cwd);
  const trial = registry.trial.get(id);
  if (trial === undefined) return exit.cannotRun(unknownTrial(registry, id));
  const reduced = reduceTrial(registry, id);
  const heading = { title: id, subject: trial.data, place: placeIn(trial), events: trial.data.events ?? [] };
  await report(reduced, heading, options, cli, exit);
  if (!options.adopt || !reduced.ok) return;
  const own = { folder: folders.value.at(-1) ?? cli.cwd, cwd: cli.cwd };
  const adopted = await adopt(registry, trial, reduced.value, own);
  if (adopted.ok) cli.err(`${adopted.value}\n`);
  else exit.cannotRun(adopted.error);
}

/** Readings stand on the lines of a CSV file, or as numbered rows in the trial. */
function placeIn({ source, attachment }: Profile<'trial'>): (row: number) => string {
  return attachment?.ok
    ? (row) => `${attachment.source.path}:${row}`
    : (row) => `${source.path}, row ${row} of the readings`;
}

interface ReportHeading extends ReductionHeading {
  /** Where a row of the readings stands. */
  readonly place: (row: number) => string;
  readonly events: readonly RunEvent[];
}

function unknownTrial(registry: Registry, id: string): Pick<Problem, 'message' | 'help'> {
  const name = quote(id);
  if (registry.machine.has(id)) {
    return {
      message: `"${name}" is a machine`,
      help: `Add the id of a filament to gather their flow ladders: meltbounds reduce ${name} FILAMENT`,
    };
  }
  const otherwise = '`meltbounds check` lists files that cannot be used.';
  return {
    message: `There is no trial "${name}" in the registry, and no such CSV file`,
    help: wordHint(id, idsOf(registry, 'trial'), otherwise),
  };
}

async function report(
  reduced: Result<Reduction, readonly BenchProblem[]>,
  heading: ReportHeading,
  options: ReduceOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  if (reduced.ok) {
    cli.out(
      options.format === 'json'
        ? formatReductionAsJson(reduced.value)
        : formatDocument(reductionDocument(reduced.value, heading), options.format, cli),
    );
    const plot = reductionPlot(reduced.value, heading.title, heading.events);
    const shown = await showPlot(plot, options, cli);
    if (!shown.ok) exit.cannotRun(shown.error);
    return;
  }
  for (const { message, help, row } of reduced.error) {
    const place = row === undefined ? heading.title : heading.place(row);
    cli.err(`${inPrint(`${place}: ${message}; ${help}`)}\n`);
  }
  exit.with(exitStatus.findings);
}
