import { type LimitAnswer, limitAt } from '../../bench/limit-line/limit-line-answers.ts';
import { type PairingReduction, reducePairing } from '../../bench/limit-line/pairing-reduction.ts';
import { loadFolders } from '../../host/load-registry.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { originOf } from '../../knowledge/origin.ts';
import { formatLimitLineAsJson } from '../../report/reduction/limit-line-as-json.ts';
import { limitLineDocument } from '../../report/reduction/limit-line-document.ts';
import { limitLinePlot } from '../../report/reduction/limit-line-plot.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { problemLine } from '../../text/problem-text.ts';
import { formatDocument } from '../../units/format-document.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import { inPrint } from '../../units/in-print.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { type CliContext, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { type PlotRequest, showPlot } from './write-plot.ts';

/** Options that only a machine with a filament needs. */
export interface PairingOptions extends PlotRequest {
  readonly nozzle?: string;
  readonly at?: readonly string[];
  readonly extrapolate?: boolean;
  readonly registry: readonly string[];
}

/** Whether an option is given that needs a machine with a filament. */
export function wantsPairing({ nozzle, at, extrapolate }: PairingOptions): boolean {
  return nozzle !== undefined || at !== undefined || extrapolate === true;
}

/** Gathers the flow ladders of a pairing and prints the line of the limit against the nozzle temperature. */
export async function runPairing(
  machine: string,
  filament: string,
  options: PairingOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const temperatures = temperaturesOf(options.at ?? []);
  if (!temperatures.ok) return exit.cannotRun(temperatures.error);
  const folders = registryFolders(options.registry, cli.cwd);
  if (!folders.ok) return exit.cannotRun(folders.error);
  const { registry } = loadFolders(folders.value, cli.cwd);
  const request = { machine, filament, ...(options.nozzle !== undefined && { nozzle: options.nozzle }) };
  const pairing = reducePairing(registry, request);
  if (!pairing.ok) return exit.cannotRun(pairing.error);
  const { answers, refused } = answersOf(pairing.value, temperatures.value, options.extrapolate ?? false);
  const origin = originOf(registry, {
    profiles: [
      { kind: 'machine', id: machine },
      { kind: 'filament', id: filament },
    ],
    trials: [...pairing.value.limits, ...pairing.value.bounds].map(({ trial }) => trial),
  });
  cli.out(
    options.format === 'json'
      ? formatLimitLineAsJson(pairing.value, answers, origin)
      : formatDocument(limitLineDocument(pairing.value, answers, origin), options.format, cli),
  );
  for (const sentence of refused) cli.err(`${inPrint(sentence)}\n`);
  if (pairing.value.line === null || refused.length > 0) exit.with(exitStatus.findings);
  const shown = await showPlot(limitLinePlot(pairing.value, answers), options, cli);
  if (!shown.ok) exit.cannotRun(shown.error);
}

function temperaturesOf(written: readonly string[]): Result<number[], Problem> {
  const temperatures: number[] = [];
  for (const text of written) {
    const quantity = parseQuantity(text, 'temperature');
    if (!quantity.ok) {
      const { code, message, help } = quantity.error;
      return refusal(code, `--at: ${message}`, help);
    }
    temperatures.push(quantity.value.value);
  }
  return success(temperatures);
}

function answersOf({ line }: PairingReduction, temperatures: readonly number[], extrapolate: boolean) {
  const answers: LimitAnswer[] = [];
  const refused: string[] = [];
  for (const temperature of temperatures) {
    if (line === null) {
      const asked = formatQuantity(temperature, 'temperature');
      refused.push(`No limit at ${asked}: there is no line to read it off.`);
      continue;
    }
    const answer = limitAt(line, temperature, { extrapolate });
    if (answer.ok) answers.push(answer.value);
    else refused.push(`${problemLine(answer.error)} Or add --extrapolate for a guess.`);
  }
  return { answers, refused };
}
