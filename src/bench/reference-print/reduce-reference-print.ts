import { failure, type Result, success } from '../../result.ts';
import { describe } from '../../statistics/describe.ts';
import { studentTQuantile } from '../../statistics/student-t.ts';
import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { RunOf } from '../facts/fact.ts';
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

/** Time and mass of a job on a machine: the mean over prints with its 95 % interval (GUM, JCGM 100:2008, 4.2 and G.3). */
export function reduceReferencePrint(
  observations: Observations,
  run: RunOf<typeof referencePrintFacts>,
): Result<Reduction, readonly BenchProblem[]> {
  const names = ['printTime', ...(observations.columns.mass === undefined ? [] : ['mass'])];
  const problems = [
    ...notPositiveReadings(observations, names, 'delete the row if the print failed'),
    ...outsideReadings(observations, 'printTime', printTimes, 'a reference print takes a minute to a month'),
    ...repeatedTable(observations, 'printTime', 2),
  ];
  if (problems.length > 0) return failure(problems);
  const { printTime = [], mass } = observations.columns;
  const resolution = run.massResolution ?? usualMassResolution;
  return success({
    method: 'referencePrint',
    results: [
      meanResult('printTime', 'time', printTime, usualScatter.printTime, 0),
      ...(mass === undefined
        ? []
        : [meanResult('printMass', 'mass', mass, usualScatter.printMass, resolution)]),
    ],
    curve: null,
    warnings: printTime.length < 2 ? ['Only one print: a second one shows how well the time repeats.'] : [],
  });
}

function meanResult(
  quantity: string,
  dimension: Dimension,
  readings: readonly number[],
  scatter: number,
  resolution: number,
): ReducedResult {
  const { count, mean, standardDeviation } = describe(readings);
  const freedom = usualScatter.freedom + count - 1;
  const squares =
    usualScatter.freedom * (scatter * mean) ** 2 + (count > 1 ? (count - 1) * standardDeviation ** 2 : 0);
  const uncertainty = Math.sqrt(squares / freedom / count + resolution ** 2 / 12);
  const half = studentTQuantile(0.975, freedom) * uncertainty;
  return {
    quantity,
    dimension,
    value: rounded(mean),
    interval: { low: rounded(mean - half), high: rounded(mean + half), coverage: 0.95 },
    censored: null,
  };
}
