import { failure, type Result, success } from '../../result.ts';
import { chiSquaredQuantile } from '../../statistics/chi-squared.ts';
import { describe } from '../../statistics/describe.ts';
import { studentTQuantile } from '../../statistics/student-t.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import { rounded } from '../../units/rounded.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { RunOf } from '../facts/fact.ts';
import { factProblems } from '../facts/fact-problems.ts';
import { massResolution, usualMassResolution } from '../facts/instrument-facts.ts';
import type { ReducedResult, Reduction } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import { notPositiveReadings, outsideReadings, repeatedTable } from '../sheet/reading-checks.ts';

/** What is known of reference prints besides the readings. */
export const referencePrintFacts = { massResolution };

/**
 * Relative scatter of print time and mass from one print of a job to the next, and what it counts beside the readings
 * in degrees of freedom (common practice, no source).
 */
const usualScatter = { printTime: 0.003, printMass: 0.01, freedom: 3 };

/** s; shorter and longer prints are no reference. */
const printTimes = [60, 30 * 86_400] as const;

/** Prints whose scatter is less probable than this by what is usual are told about. */
const leastAgreement = 0.01;

/** One quantity of the prints. */
interface Series {
  readonly quantity: 'printTime' | 'printMass';
  readonly dimension: 'time' | 'mass';
  readonly readings: readonly number[];
  /** Relative. */
  readonly usual: number;
  /** In the unit of the readings. */
  readonly resolution: number;
}

/**
 * Time and mass of a job on a machine: the mean over prints with its 95 % interval (GUM, JCGM 100:2008, 4.2 and G.3). Prints that
 * scatter by more than is usual are named, and the surplus widens the interval by Student's factor for their number alone.
 */
export function reduceReferencePrint(
  observations: Observations,
  run: RunOf<typeof referencePrintFacts>,
): Result<Reduction, readonly BenchProblem[]> {
  const names = ['printTime', ...(observations.columns.mass === undefined ? [] : ['mass'])];
  const problems = [
    ...factProblems(referencePrintFacts, run),
    ...notPositiveReadings(observations, names, 'delete the row if the print failed'),
    ...outsideReadings(observations, 'printTime', printTimes, 'a reference print takes a minute to a month'),
    ...repeatedTable(observations, 'printTime', 2),
  ];
  if (problems.length > 0) return failure(problems);
  const all = seriesOf(observations, run);
  return success({
    method: 'referencePrint',
    results: all.map(meanResult),
    curve: null,
    warnings: [
      ...all.flatMap(disagreement),
      ...((observations.columns.printTime ?? []).length < 2
        ? ['Only one print: a second one shows how well the time repeats.']
        : []),
    ],
  });
}

function seriesOf({ columns }: Observations, run: RunOf<typeof referencePrintFacts>): Series[] {
  const { printTime = [], mass } = columns;
  const times: Series = {
    ...{ quantity: 'printTime', dimension: 'time', readings: printTime },
    ...{ usual: usualScatter.printTime, resolution: 0 },
  };
  if (mass === undefined) return [times];
  const resolution = run.massResolution ?? usualMassResolution;
  const masses: Series = {
    ...{ quantity: 'printMass', dimension: 'mass', readings: mass },
    ...{ usual: usualScatter.printMass, resolution },
  };
  return [times, masses];
}

function meanResult(series: Series): ReducedResult {
  const { quantity, dimension, readings, usual, resolution } = series;
  const { count, mean, standardDeviation } = describe(readings);
  const freedom = usualScatter.freedom + count - 1;
  const squares =
    usualScatter.freedom * (usual * mean) ** 2 + (count > 1 ? (count - 1) * standardDeviation ** 2 : 0);
  const known =
    studentTQuantile(0.975, freedom) * Math.sqrt(squares / freedom / count + resolution ** 2 / 12);
  const half =
    count > 1
      ? Math.hypot(known, studentTQuantile(0.975, count - 1) * Math.sqrt(surplusOf(series) / count))
      : known;
  return {
    quantity,
    dimension,
    value: rounded(mean),
    interval: { low: rounded(mean - half), high: rounded(mean + half), coverage: 0.95 },
    censored: null,
  };
}

/** Variance of the readings beyond the one up to which chance explains it by the usual scatter; 0 where they agree. */
function surplusOf({ readings, usual, resolution }: Series): number {
  const { count, mean, standardDeviation } = describe(readings);
  const explained = (usual * mean) ** 2 + resolution ** 2 / 12;
  const most = chiSquaredQuantile(1 - leastAgreement, count - 1) / (count - 1);
  return Math.max(0, standardDeviation ** 2 - most * explained);
}

/** Prints that do not repeat, with the figures. */
function disagreement(series: Series): string[] {
  const { quantity, dimension, readings, usual } = series;
  if (readings.length < 2 || surplusOf(series) === 0) return [];
  const { mean, standardDeviation } = describe(readings);
  const [least, most] = [Math.min(...readings), Math.max(...readings)].map((reading) =>
    formatQuantity(reading, dimension, {
      significantDigits: 4,
      ...(dimension === 'time' && { unit: 'min' }),
    }),
  );
  const percent = (share: number) => `${formatNumber(100 * share, { significantDigits: 2 })} %`;
  const what = quantity === 'printTime' ? 'times' : 'masses';
  return [
    `The print ${what} range from ${least} to ${most}: they scatter by ${percent(standardDeviation / mean)}, and prints of one job usually by ${percent(usual)}. The interval is widened for it; find what differed (a pause, a setting, a feeding fault) and print again.`,
  ];
}
