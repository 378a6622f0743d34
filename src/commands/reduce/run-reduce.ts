import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { BenchProblem } from '../../bench/bench-problem.ts';
import { methodOf } from '../../bench/methods.ts';
import { reduceTrial } from '../../bench/reduce-trial.ts';
import type { Reduction } from '../../bench/reduction.ts';
import type { RunEvent } from '../../bench/run-event.ts';
import { readSheet } from '../../bench/sheet/bench-sheet.ts';
import { isPlainSheet } from '../../bench/sheet/plain-sheet.ts';
import { loadFolders } from '../../host/load-registry.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { originOf } from '../../knowledge/origin.ts';
import type { Profile } from '../../registry/profile.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { formatReductionAsJson } from '../../report/reduction/reduction-as-json.ts';
import { type ReductionHeading, reductionDocument } from '../../report/reduction/reduction-document.ts';
import { reductionPlot } from '../../report/reduction/reduction-plot.ts';
import type { SheetReading } from '../../report/reduction/sheet-facts.ts';
import type { Problem } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import { counted } from '../../text/words.ts';
import { formatDocument } from '../../units/format-document.ts';
import { inPrint } from '../../units/in-print.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { type CliContext, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { usage } from '../usage.ts';
import { adopt } from './adopt.ts';
import { type PairingOptions, runPairing, wantsPairing } from './reduce-pairing.ts';
import { type ReadingOptions, reduceSheet, type SheetOptions } from './reduce-sheet.ts';
import { checkPlotRequest, showPlot } from './write-plot.ts';

export type ReduceOptions = SheetOptions & PairingOptions & { readonly adopt?: boolean };

export async function runReduce(
  trial: string,
  filament: string | undefined,
  options: ReduceOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const plot = checkPlotRequest(options, cli.cwd);
  if (!plot.ok) return exit.cannotRun(plot.error);
  const misplaced = misplacedOption(filament, options);
  if (misplaced !== null) return exit.cannotRun(misplaced.error);
  if (filament !== undefined) return runPairing(trial, filament, options, cli, exit);
  return isSheet(trial, cli.cwd) ? runSheet(trial, options, cli, exit) : runTrial(trial, options, cli, exit);
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
        '--method belongs to a bare sheet',
        'The trials of a machine and a filament hold their own; leave it out.',
      );
}

/** What ends like a table, or is there and has an ending or a folder: ids of trials have neither. */
function isSheet(trial: string, cwd: string): boolean {
  if (/\.(?:csv|tsv|tab|txt|xlsx|xlsm)$/i.test(trial)) return true;
  return /[/\\.]/.test(trial) && existsSync(resolve(cwd, trial));
}

async function runSheet(path: string, options: ReduceOptions, cli: CliContext, exit: Exit): Promise<void> {
  if (options.adopt) {
    exit.cannotRun({
      message: 'A bare sheet names no filament to adopt the limit for',
      help: 'Add it to the registry as a trial and give the id of the trial.',
    });
    return;
  }
  const reduced = await reduceSheet(path, options, cli.cwd);
  if (!reduced.ok) return exit.cannotRun(reduced.error);
  const place = (row: number) => `${path}:${row}`;
  const heading = { title: path, subject: null, place, events: eventsOf(options) };
  if (!reduced.value.ok) {
    refuse(reduced.value.error, heading, cli, exit);
    const isOpen = reduced.value.error.some(({ code }) => code === 'ambiguousNumber');
    if (isOpen) cli.err('Or name the decimal sign: --decimal comma or --decimal point.\n');
    return;
  }
  const { reduction, sheet } = reduced.value.value;
  await report(reduction, { ...heading, sheet }, options, cli, exit);
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
  if (trial === undefined) {
    if (!registry.machine.has(id) && existsSync(resolve(cli.cwd, id)))
      return runSheet(id, options, cli, exit);
    return exit.cannotRun(unknownTrial(registry, id));
  }
  const misread = foreignReading(options);
  if (misread !== null) return exit.cannotRun(misread.error);
  const reduced = reduceTrial(registry, id);
  const { machine, filament, events = [] } = trial.data;
  const origin = originOf(registry, {
    profiles: [
      ...(machine === undefined ? [] : [{ kind: 'machine' as const, id: machine }]),
      { kind: 'filament', id: filament },
    ],
    trials: [id],
  });
  const sheet = unusualSheet(trial);
  const heading = { title: id, subject: trial.data, origin, place: placeIn(trial), events };
  if (!reduced.ok) return refuse(reduced.error, heading, cli, exit);
  await report(reduced.value, { ...heading, ...(sheet !== null && { sheet }) }, options, cli, exit);
  if (!options.adopt) return;
  const own = { folder: folders.value.at(-1) ?? cli.cwd, cwd: cli.cwd };
  const readAnew = () => loadFolders(folders.value, cli.cwd).registry;
  const adopted = await adopt(registry, trial, reduced.value, own, readAnew);
  if (adopted.ok) cli.err(`${adopted.value}\n`);
  else exit.cannotRun(adopted.error);
}

/** Options that say how to read a bare sheet have no place where a trial is read. */
function foreignReading({ decimal, sheet }: ReadingOptions) {
  return decimal === undefined && sheet === undefined
    ? null
    : usage(
        '--decimal and --sheet belong to a bare sheet',
        'Start the trial anew from its sheet with `meltbounds new trial --from`.',
      );
}

/** How the sheet beside a trial was understood, where it is not written as the program writes them or has notes. */
function unusualSheet({ data, attachment }: Profile<'trial'>): SheetReading | null {
  if (attachment?.ok !== true) return null;
  const { text, encoding } = attachment.source;
  const sheet = readSheet(text, methodOf(data.method));
  if (!sheet.ok || (isPlainSheet(sheet.value, encoding) && sheet.value.notes.length === 0)) return null;
  return { ...sheet.value, encoding, remarks: [] };
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
    message: `There is no trial "${name}" in the registry, and no file of that name`,
    help: wordHint(id, idsOf(registry, 'trial'), otherwise),
  };
}

async function report(
  reduction: Reduction,
  heading: ReportHeading,
  options: ReduceOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  cli.out(
    options.format === 'json'
      ? formatReductionAsJson(reduction, heading.origin, heading.sheet)
      : formatDocument(reductionDocument(reduction, heading), options.format, cli),
  );
  const shown = await showPlot(reductionPlot(reduction, heading.title, heading.events), options, cli);
  if (!shown.ok) exit.cannotRun(shown.error);
}

/** Many rows with problems have mostly the same one. */
const mostProblems = 50;

function refuse(
  problems: readonly BenchProblem[],
  heading: Pick<ReportHeading, 'title' | 'place'>,
  cli: CliContext,
  exit: Exit,
): void {
  for (const { message, help, row } of problems.slice(0, mostProblems)) {
    const place = row === undefined ? heading.title : heading.place(row);
    cli.err(`${inPrint(`${place}: ${message}; ${help}`)}\n`);
  }
  const hidden = problems.length - mostProblems;
  if (hidden > 0) cli.err(`${counted(hidden, 'more problem')} of the readings not shown.\n`);
  exit.with(exitStatus.findings);
}
