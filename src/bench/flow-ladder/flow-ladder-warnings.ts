import { nonDecreasingFit } from '../../statistics/monotone-regression.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import { largestScaleShare } from '../facts/instrument-facts.ts';
import type { ReducedResult } from '../reduction.ts';
import type { FlowLadderSettings } from './flow-ladder-settings.ts';
import type { LadderStep, WeighedPiece } from './flow-ladder-steps.ts';
import type { PossibleJam } from './jam-posterior.ts';
import { runDrift } from './run-drift.ts';
import { startDoubt } from './start-deficit.ts';

/** A reduced ladder as the warnings see it. */
interface JudgedLadder {
  /** As written. */
  readonly readings: readonly WeighedPiece[];
  /** The ones that count, as written. */
  readonly counted: readonly WeighedPiece[];
  /** The same by their flow. */
  readonly steps: readonly LadderStep[];
  readonly settings: FlowLadderSettings;
  readonly result: ReducedResult;
  /** Fall of the delivered share from the lowest step to the limit that is no part of the onset. */
  readonly drift: number;
  readonly jam: PossibleJam | null;
  /** What is missing at the lowest steps, of the nominal mass. */
  readonly start: ReducedResult;
}

type Warning = (ladder: JudgedLadder) => string | null;

const flow = (value: number) => formatQuantity(value, 'volumeFlow', { significantDigits: 4 });
const percent = (share: number) => `${formatNumber(100 * share, { significantDigits: 2 })} %`;

const enoughSteps = 6;
const largestDrift = 0.02;
const largestRelativeWidth = 0.1;
/** How many standard uncertainties of the logarithm of a ratio of scatters make one that is no chance. */
const unsteadyDeviations = 2.4;
/** A jam that is less probable is worth no words. */
const likelyJam = 0.35;
/** A drift over the run, as a share, and how many of its uncertainties make one that is no chance. */
const largestRunDrift = 0.004;
const unlikely = 3.5;

const halted: Warning = ({ settings: { haltedAt }, result }) => {
  if (haltedAt === undefined) return null;
  return result.censored === 'above'
    ? `The run was halted at ${flow(haltedAt)} before the deficit was reached: the limit lies between ${flow(result.value)} and the halt, unless the halt had another cause.`
    : `The run was halted at ${flow(haltedAt)}; readings at this flow and above do not count.`;
};

const fewSteps: Warning = ({ steps }) =>
  steps.length < enoughSteps
    ? `Only ${steps.length} different flows: ${enoughSteps} or more show the plateau and the onset.`
    : null;

const noRepeats: Warning = ({ steps }) =>
  steps.every((step) => step.count === 1)
    ? 'No step was repeated: two or three readings per step show how well they repeat, above all past the onset, where the scatter grows.'
    : null;

const unsteady: Warning = ({ steps, result }) => {
  if (result.censored !== null) return null;
  const before = pooledScatter(steps.filter(({ flow }) => flow < result.value));
  const past = pooledScatter(steps.filter(({ flow }) => flow >= result.value));
  const deviation = Math.sqrt(1 / (2 * before.freedom) + 1 / (2 * past.freedom));
  const isUnsteady = Math.log(past.deviation / before.deviation) > unsteadyDeviations * deviation;
  return before.freedom > 0 && past.freedom > 0 && isUnsteady
    ? `Past the limit readings of one step scatter by ${percent(past.deviation)}, before it by ${percent(before.deviation)}: the extrusion is unsteady there, and the limit less sure than its interval says. Repeat the steps around ${flow(result.value)} more often.`
    : null;
};

/** Standard deviation of readings within steps, never less than the scale can show. */
function pooledScatter(steps: readonly LadderStep[]): {
  readonly deviation: number;
  readonly freedom: number;
} {
  const repeated = steps.filter(({ count }) => count > 1);
  const freedom = repeated.reduce((sum, { count }) => sum + count - 1, 0);
  const squares = repeated.reduce((sum, step) => sum + step.squares, 0);
  const rounding = Math.max(0, ...repeated.map(({ relativeResolution }) => relativeResolution ** 2 / 12));
  return { deviation: Math.sqrt(Math.max(squares / freedom, rounding)), freedom };
}

const lightSamples: Warning = ({ steps }) => {
  const light = steps.filter((step) => step.relativeResolution > largestScaleShare);
  const worst = Math.max(...light.map((step) => step.relativeResolution));
  return light.length > 0
    ? `At ${light.length} of ${steps.length} steps the scale's resolution is more than ${percent(largestScaleShare)} of the mass (up to ${percent(worst)}): feed a longer piece or use a finer scale.`
    : null;
};

/** Ascending passes may follow one another; a step back within a pass is another order. */
const unordered: Warning = ({ readings, steps }) => {
  const lowest = steps[0]?.flow;
  const back = readings.find((reading, index) => {
    const before = readings[index - 1];
    return before !== undefined && reading.flow < before.flow && reading.flow !== lowest;
  });
  return back === undefined
    ? null
    : `The flows do not ascend (row ${back.row}): a hot end that has run dry may need a while to recover, which then shows at a later low step.`;
};

const drifting: Warning = ({ drift, result }) =>
  result.censored !== 'below' && Math.abs(drift) > largestDrift
    ? `The delivered share ${drift > 0 ? 'falls' : 'rises'} by ${percent(Math.abs(drift))} over the plateau, before the onset: look for a slipping drive, a hot end that is still warming up, or a scale that was not zeroed.`
    : null;

const offNominal: Warning = ({ start: { value }, steps, settings }) => {
  const doubt = startDoubt(steps, settings);
  return Math.abs(value) > doubt
    ? `At the lowest steps ${percent(1 - value)} of the fed mass came out, ${percent(Math.abs(value))} ${value > 0 ? 'less' : 'more'} than the nominal mass, where diameter, density and scale explain ${percent(doubt)}: check the diameter, the density, the feed calibration and the zero of the scale. The limit counts from these steps, and errors in diameter and density cancel in it.`
    : null;
};

/** Repeats past the onset scatter by themselves and are left out. */
const driftOverRun: Warning = ({ counted, result: { interval } }) => {
  const drift = runDrift(counted.filter(({ flow }) => flow < (interval.low ?? Number.POSITIVE_INFINITY)));
  if (drift === null || Math.abs(drift.change) < Math.max(largestRunDrift, unlikely * drift.uncertainty))
    return null;
  return `Over the run the mass at one and the same flow ${drift.change < 0 ? 'falls' : 'rises'} by ${percent(Math.abs(drift.change))} (standard uncertainty ${percent(drift.uncertainty)}): the scale drifts, or the hot end was not warm through. Let both warm up, zero the scale before each piece, and weigh a piece of known mass at the beginning and at the end.`;
};

const suddenJam: Warning = ({ jam, result }) =>
  result.censored === null && jam !== null && jam.probability > likelyJam
    ? `All is well at ${flow(jam.gap.low)} and much is missing at once at ${flow(jam.gap.high)}, as in a sudden jam: the readings do not tell where between the two, and the interval spans the gap. Rely on its lower end, and add steps between the two.`
    : null;

const noPlateau: Warning = ({ steps, result }) =>
  result.censored === null && result.value < (steps[1]?.flow ?? 0)
    ? `Only the lowest step is below the limit: add steps below ${flow(result.value)} to show full delivery.`
    : null;

const startsTooHigh: Warning = ({ result }) =>
  result.censored === 'below'
    ? `The lowest step already delivers too little: start the ladder well below ${flow(result.value)}.`
    : null;

const wideGap: Warning = ({ steps, result: { value, interval, censored }, settings }) => {
  if (censored !== null || interval.low === null || interval.high === null) return null;
  if (interval.high - interval.low <= largestRelativeWidth * value) return null;
  const [before, after] = bracket(steps, settings.acceptedDeficit);
  if (before === undefined || after === undefined) return null;
  return `The interval is wider than ${percent(largestRelativeWidth)} of the limit: add steps between ${flow(before.flow)} and ${flow(after.flow)}.`;
};

const nearTheEnd: Warning = ({ steps, result: { interval } }) => {
  const last = steps.at(-1)?.flow ?? Number.NaN;
  return interval.high !== null && interval.high > last
    ? `The interval reaches beyond the highest step (${flow(last)}): add higher steps until the deficit is clearly passed.`
    : null;
};

/** The neighbouring steps between which the monotone deficit crosses the tolerance. */
function bracket(steps: readonly LadderStep[], tolerance: number): readonly (LadderStep | undefined)[] {
  const losses = nonDecreasingFit(
    steps.map((step) => -step.meanLogRatio),
    steps.map((step) => step.count),
  );
  const accepted = (losses[0] ?? 0) - Math.log1p(-tolerance);
  const after = losses.findIndex((loss) => loss >= accepted);
  return after < 1 ? [] : [steps[after - 1], steps[after]];
}

const warnings: readonly Warning[] = [
  halted,
  startsTooHigh,
  noPlateau,
  suddenJam,
  nearTheEnd,
  wideGap,
  fewSteps,
  noRepeats,
  unsteady,
  lightSamples,
  unordered,
  drifting,
  driftOverRun,
  offNominal,
];

/** What a reader should know before relying on the limit, the most serious first. */
export function ladderWarnings(ladder: JudgedLadder): string[] {
  return warnings.flatMap((warning) => warning(ladder) ?? []);
}
