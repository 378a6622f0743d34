import { resolve } from 'node:path';
import type { BenchProblem } from '../bench/bench-problem.ts';
import { fittingMethod } from '../bench/fitting-method.ts';
import { flowLadder } from '../bench/flow-ladder/flow-ladder.ts';
import type { FedPieces } from '../bench/flow-ladder/next-piece/lay-out-next-piece.ts';
import { readSheetTable } from '../bench/sheet/bench-sheet.ts';
import type { Observations } from '../bench/sheet/observations.ts';
import { withoutUnread } from '../bench/sheet/unread-rows.ts';
import { fedTrial } from '../decisions/plan/fed-trial.ts';
import { type NextPieceRequest, planNextPiece } from '../decisions/plan/plan-next-piece.ts';
import type { PlanRequest } from '../decisions/plan/plan-request.ts';
import { readSheetFile } from '../host/read-sheet.ts';
import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { printable } from '../text/printable.ts';
import { inPrint } from '../units/in-print.ts';
import { type CliContext, exitStatus } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { measureOption } from './measure-option.ts';
import { type OpenRegistry, openRegistry, type RegistryOptions } from './open-registry.ts';
import { planForms } from './plan-forms.ts';
import { decimalOf, type ReadingOptions } from './reduce/reduce-sheet.ts';
import type { PlanFormat } from './shared-options.ts';
import { usage } from './usage.ts';

/** Options of `plan` that only `--after` takes. */
export interface AfterOptions extends Pick<ReadingOptions, 'decimal' | 'sheet'> {
  readonly after?: string;
  readonly width?: string;
  readonly policy?: string;
  readonly tolerance?: string;
  readonly halted?: string;
}

interface RunOptions extends AfterOptions, RegistryOptions {
  readonly method: string;
  readonly format: PlanFormat;
  readonly out?: string;
}

const ownOptions = ['width', 'policy', 'tolerance', 'halted', 'decimal', 'sheet'] as const;
/** What a trial holds itself. */
const sheetOptions = ['tolerance', 'halted', 'decimal', 'sheet'] as const;

/** An option that has no place beside the others. */
export function misplacedOption(options: RunOptions): ReturnType<typeof usage> | null {
  if (options.after === undefined) {
    const own = ownOptions.find((name) => options[name] !== undefined);
    return own === undefined
      ? null
      : usage(`--${own} belongs to --after`, 'Name what has been weighed so far: --after SHEET.');
  }
  if (options.method !== flowLadder.method) {
    return usage(
      `--after continues a ${flowLadder.method}, not a ${printable(options.method)}`,
      'Leave --method out.',
    );
  }
  if (options.format === 'trial') {
    return usage(
      '--after gives the next row of a sheet or a trial that is there, and no new trial',
      'Leave --format trial out.',
    );
  }
  return options.out === undefined
    ? null
    : usage('--after prints one piece and writes no files', 'Leave --out out.');
}

/** Prints which piece to feed next after those in a sheet or a trial, or to stop. */
export async function runAfter(
  after: string,
  request: PlanRequest & { readonly today: string },
  options: RunOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const asked = askedOf(request, options);
  if (!asked.ok) return exit.cannotRun(asked.error);
  const opened = await openWith(after, options, cli);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trial, trust } = opened.value;
  const begun =
    trial === null
      ? await fedSheet(after, asked.value, options, cli.cwd)
      : fedOfTrial(trial, asked.value, options);
  if (!begun.ok) return exit.cannotRun(begun.error);
  if (!begun.value.ok) return refuse(after, begun.value.error, cli, exit);
  const planned = planNextPiece(registry, begun.value.value.request, begun.value.value.fed);
  if (!planned.ok) return exit.cannotRun(planned.error);
  if (!planned.value.ok) return refuse(after, planned.value.error, cli, exit);
  const trusted = trust(request.today);
  if (!trusted.ok) return exit.cannotRun(trusted.error);
  cli.out(planForms[options.format](planned.value.value, cli));
}

function askedOf(request: PlanRequest, { width, policy }: RunOptions): Result<NextPieceRequest, Problem> {
  const share = measureOption('--width', width, 'ratio');
  if (!share.ok) return share;
  if (share.value !== undefined && !(share.value > 0 && share.value <= 1)) {
    return usage(
      '--width: an interval is wider than nothing, and at most 100 %',
      'Write, for instance: --width "6 %"',
    );
  }
  return success({
    ...request,
    ...(share.value !== undefined && { intervalWidth: share.value }),
    ...(policy !== undefined && { policy }),
  });
}

/** The registry, and the trial that is named by its id or its file; null for a sheet. */
async function openWith(
  after: string,
  options: RunOptions,
  cli: CliContext,
): Promise<Result<OpenRegistry & { readonly trial: Profile<'trial'> | null }, Problem>> {
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return opened;
  const own = opened.value.registry.trial.get(after) ?? trialAt(opened.value.registry, after, cli.cwd);
  if (own !== null || !/\.ya?ml$/i.test(after)) return success({ ...opened.value, trial: own });
  const wider = await openRegistry(cli, options, [after]);
  if (!wider.ok) return wider;
  const loose = trialAt(wider.value.registry, after, cli.cwd);
  if (loose !== null) return success({ ...wider.value, trial: loose });
  return refusal(
    'unknownTrial',
    `${printable(after)} is no trial that can be read`,
    `See what is wrong with it: meltbounds check ${printable(after)}`,
  );
}

function trialAt(registry: Registry, path: string, cwd: string): Profile<'trial'> | null {
  const wanted = resolve(cwd, path);
  return [...registry.trial.values()].find(({ source }) => resolve(cwd, source.path) === wanted) ?? null;
}

/** A ladder that has begun: what is asked of it, and its pieces; the inner problems are those of its sheet. */
type Begun = Result<
  Result<{ readonly request: NextPieceRequest; readonly fed: FedPieces }, readonly BenchProblem[]>,
  Problem
>;

function fedOfTrial(trial: Profile<'trial'>, request: NextPieceRequest, options: RunOptions): Begun {
  const foreign = sheetOptions.find((name) => options[name] !== undefined);
  return foreign === undefined
    ? fedTrial(trial, request)
    : usage(`--${foreign} belongs to a bare sheet`, 'A trial holds it itself; leave it out.');
}

async function fedSheet(
  path: string,
  request: NextPieceRequest,
  options: RunOptions,
  cwd: string,
): Promise<Begun> {
  const acceptedDeficit = measureOption('--tolerance', options.tolerance, 'ratio');
  if (!acceptedDeficit.ok) return acceptedDeficit;
  const haltedAt = measureOption('--halted', options.halted, 'volumeFlow');
  if (!haltedAt.ok) return haltedAt;
  const read = await readPieces(path, options, cwd);
  if (!read.ok) return read;
  if (!read.value.ok) return success(read.value);
  return success(
    success({
      request,
      fed: {
        observations: read.value.value,
        ...(acceptedDeficit.value !== undefined && { acceptedDeficit: acceptedDeficit.value }),
        ...(haltedAt.value !== undefined && { haltedAt: haltedAt.value }),
      },
    }),
  );
}

/** The pieces of a sheet that may have no rows yet, or rows whose mass is still to be written. */
async function readPieces(
  path: string,
  options: RunOptions,
  cwd: string,
): Promise<Result<Result<Observations, readonly BenchProblem[]>, Problem>> {
  const file = await readSheetFile(path, cwd, options.sheet, 0);
  if (!file.ok) return file;
  if (!file.value.ok) return success(file.value);
  const { table } = file.value.value;
  const fitting = fittingMethod(table);
  const found = fitting.ok && fitting.value.ok ? fitting.value.value.method : flowLadder.method;
  if (found !== flowLadder.method) {
    return refusal(
      'otherMethod',
      `${printable(path)} is the sheet of a ${found}, and only a ${flowLadder.method} is fed piece by piece`,
      'Name the sheet of a flow ladder.',
    );
  }
  const weighed = withoutUnread(table, flowLadder, 'extrudedMass');
  if (!weighed.ok) return success(weighed);
  const sheet = readSheetTable(weighed.value, flowLadder, decimalOf(options));
  return success(sheet.ok ? success(sheet.value.observations) : sheet);
}

function refuse(path: string, problems: readonly BenchProblem[], cli: CliContext, exit: Exit): void {
  for (const { message, help, row } of problems) {
    const place = row === undefined ? printable(path) : `${printable(path)}:${row}`;
    cli.err(`${inPrint(`${place}: ${message}; ${help}`)}\n`);
  }
  exit.with(exitStatus.cannotRun);
}
