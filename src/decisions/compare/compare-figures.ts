import type { JobPaths } from '../../bench/reference-print/job-plan.ts';
import type { Origin } from '../../knowledge/origin.ts';
import { compareText } from '../../registry/finding.ts';
import { failure, type Problem, type Result, refusal, success } from '../../result.ts';
import type { TableInput } from '../../tables/derive/speed-table.ts';
import { printable } from '../../text/printable.ts';
import { enumerated } from '../../text/words.ts';
import type { Count, Fraction, Millimetres, Money } from '../../units/canonical.ts';
import type { Comparison } from './comparison.ts';
import { type EstimateProblem, estimateJob } from './estimate-job.ts';
import { type CurrencyProblem, currencyProblem, type HourlyCosts } from './hourly-costs.ts';
import { jobAtLayerHeight, type LayerHeightProblem } from './job-at-layer-height.ts';
import type { JobEstimate } from './job-estimate.ts';
import type { PairingFigures } from './pairing-figures.ts';
import { against } from './saved-hours.ts';
import { speedAnswer } from './speed-answer.ts';

/** A job as a comparison needs it: plain values, so that a page can hold them. */
export interface JobFigures {
  readonly id: string;
  readonly name: string;
  readonly paths: JobPaths;
  readonly isInvented: boolean;
  /** The document that it was taken from. */
  readonly input: TableInput;
}

/** What a comparison may be asked besides. */
export interface ComparisonTerms {
  /** Height of the layers above the first; by default as the job has it. */
  readonly layerHeight?: Millimetres;
  /** Share that is used of what the policy lets melt, above 0 and at most 1; by default all of it. */
  readonly meltShare?: Fraction;
  /** Number of such jobs over which a difference of price is spread. */
  readonly jobs?: Count;
  /** Prices of machines by their ids, in place of those that their profiles state; they count as assumed. */
  readonly prices?: Readonly<Record<string, Money>>;
  /** What an hour is worth. */
  readonly hourValue?: Money;
  /** What an hour of printing costs in power, wear and labour; each given only where it is to count. */
  readonly hourlyCosts?: HourlyCosts;
}

/** Why figures cannot be compared. */
export type FiguresComparisonProblem =
  | EstimateProblem
  | LayerHeightProblem
  | CurrencyProblem
  | Problem<'noPairing' | 'otherMachine'>;

/**
 * Compares pairings on a job by their figures alone: time and what limits it, speed really reached, filament, sound and money.
 * The others are compared with the first. All numbers in canonical units.
 */
export function compareFigures(
  job: JobFigures,
  pairings: readonly PairingFigures[],
  { layerHeight, meltShare = 1, jobs, prices = {}, hourValue, hourlyCosts = {} }: ComparisonTerms = {},
): Result<Comparison, FiguresComparisonProblem> {
  const mixed = currencyProblem(hourlyCosts);
  if (mixed !== null) return failure(mixed);
  const machines = pairings.map(({ machine }) => machine);
  const other = Object.keys(prices).find((machine) => !machines.includes(machine));
  if (other !== undefined) return otherMachine(other, machines);
  const paths = layerHeight === undefined ? success(job.paths) : jobAtLayerHeight(job.paths, layerHeight);
  if (!paths.ok) return paths;
  const estimates: JobEstimate[] = [];
  for (const stated of pairings) {
    const figures = pricedAs(stated, prices);
    const estimate = estimateJob(figures, { id: job.id, ...paths.value }, meltShare);
    if (!estimate.ok) return estimate;
    estimates.push(estimate.value);
  }
  const [first, ...others] = estimates;
  if (first === undefined) {
    return refusal('noPairing', 'There is nothing to compare', 'Name at least one pairing.');
  }
  const terms = { jobs: jobs ?? null, hourValue: hourValue ?? null, hourlyCosts };
  return success({
    job: { id: job.id, name: job.name },
    policy: [...new Set(pairings.map((figures) => figures.policy))].join(', '),
    layerHeight: paths.value === job.paths ? null : (layerHeight ?? null),
    meltShare,
    ...terms,
    answer: speedAnswer(first, others),
    estimates: estimates.map((estimate) => against(first, estimate, terms)),
    inputs: inputsOf(job, pairings),
    origin: originOfComparison(job, pairings, estimates),
  });
}

/** The same with a price that was given. */
function pricedAs(figures: PairingFigures, prices: NonNullable<ComparisonTerms['prices']>): PairingFigures {
  const given = Object.hasOwn(prices, figures.machine) ? prices[figures.machine] : undefined;
  if (given === undefined) return figures;
  return { ...figures, price: { value: given, basis: 'assumed', isSimulated: false } };
}

function otherMachine(machine: string, machines: readonly string[]) {
  return refusal(
    'otherMachine',
    `A price is given for ${printable(machine)}, which no pairing is on`,
    `Give prices for ${enumerated([...new Set(machines)])} alone.`,
  );
}

/** The documents behind a comparison, each once. */
function inputsOf(job: JobFigures, pairings: readonly PairingFigures[]): TableInput[] {
  const all = [job.input, ...pairings.flatMap(({ inputs }) => inputs)];
  return [...new Map(all.map((input) => [`${input.kind} ${input.id}`, input])).values()];
}

/** What is not real of the job, of the pairings, and of the trials that the estimates rest on. */
function originOfComparison(
  { id, isInvented }: JobFigures,
  pairings: readonly PairingFigures[],
  estimates: readonly JobEstimate[],
): Origin {
  const simulated = new Set(pairings.flatMap(({ origin }) => origin.simulated));
  const trials = new Set(estimates.flatMap((estimate) => estimate.trials));
  const invented = [
    ...(isInvented ? [{ kind: 'job', id } as const] : []),
    ...pairings.flatMap(({ origin }) => origin.invented),
  ];
  return {
    simulated: [...trials].filter((trial) => simulated.has(trial)).toSorted(compareText),
    invented: [...new Map(invented.map((named) => [`${named.kind} ${named.id}`, named])).values()].toSorted(
      (a, b) => compareText(a.kind, b.kind) || compareText(a.id, b.id),
    ),
  };
}
