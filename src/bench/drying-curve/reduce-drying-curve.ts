import { failure, type Result, success } from '../../result.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { factProblems } from '../facts/fact-problems.ts';
import { usualMassResolution } from '../facts/instrument-facts.ts';
import type { Reduction } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import {
  negativeReadings,
  notPositiveReadings,
  outsideReadings,
  repeatedTable,
  tooFewValues,
} from '../sheet/reading-checks.ts';
import { type DryingCurveRun, dryingCurveFacts } from './drying-curve-facts.ts';
import type { DryingData } from './drying-data.ts';
import { possibleDryings } from './drying-fit.ts';
import { dryingResults } from './drying-results.ts';

/**
 * The time in the dryer to an asked residual moisture, from the mass of a spool as it dries. The mass approaches that
 * of the dry spool in a shape that the readings tell: one exponential, Fick's diffusion out of a cylinder (Crank, The
 * Mathematics of Diffusion, 2nd ed. 1975, section 5.3; from memory), a fast stage before either, or a late start. The
 * interval is by the Monte Carlo method over shapes and their parameters (JCGM 101:2008, 6.4.8).
 *
 * A drying that does not flatten within the readings tells no dry mass: the time is then only known to be longer.
 */
export function reduceDryingCurve(
  observations: Observations,
  run: DryingCurveRun,
): Result<Reduction, readonly BenchProblem[]> {
  const { elapsedTime: times = [], mass: masses = [] } = observations.columns;
  const data: DryingData = {
    times,
    masses,
    resolution: run.massResolution ?? usualMassResolution,
    residualMoisture: run.residualMoisture ?? Number.NaN,
    reelMass: run.reelMass ?? 0,
  };
  const problems = [...factProblems(dryingCurveFacts, run), ...checkDrying(observations, data)];
  if (problems.length > 0) return failure(problems);
  return success(dryingResults(data, possibleDryings(data)));
}

function checkDrying(observations: Observations, data: DryingData): BenchProblem[] {
  const fewReadings = tooFewValues(
    observations,
    'elapsedTime',
    6,
    'weigh more often while the mass falls, and go on until it no longer falls',
  );
  const basic = [
    ...checkAsked(data),
    ...negativeReadings(observations, 'elapsedTime'),
    ...notPositiveReadings(observations, ['mass'], 'write what the scale showed'),
    ...outsideReadings(observations, 'elapsedTime', [0, 60 * 86_400], 'a drying takes up to two months'),
    ...repeatedTable(observations, 'elapsedTime', 3),
    ...fewReadings,
  ];
  return basic.length > 0 ? basic : checkFall(observations, data);
}

function checkAsked({ residualMoisture, reelMass, masses }: DryingData): BenchProblem[] {
  const lightest = Math.min(...masses);
  return [
    ...(residualMoisture > 0 && residualMoisture < 0.2
      ? []
      : [
          {
            code: 'badSetting' as const,
            message: `the residual moisture cannot be ${residualMoisture}`,
            found: String(residualMoisture),
            help: 'give a share of the dry mass above 0 and below 20 %, such as 0.02 %',
          },
        ]),
    ...(reelMass < lightest
      ? []
      : [
          {
            code: 'badSetting' as const,
            message: `the reel mass of ${reelMass} g is more than the lightest reading of reel and filament`,
            found: String(reelMass),
            help: 'check the mass of the empty reel; leave it out if the readings do not include it',
          },
        ]),
  ];
}

/** A share of the mass that no drying takes away. */
const largestLoss = 0.3;

/** A dryer takes water away: masses that rise, or fall by a third, are something else. */
function checkFall(
  { rows }: Observations,
  { times, masses, resolution, reelMass }: DryingData,
): BenchProblem[] {
  const order = times.map((_, index) => index).sort((a, b) => (times[a] ?? 0) - (times[b] ?? 0));
  const at = (index: number | undefined) => masses[index ?? -1] ?? Number.NaN;
  const [first, last] = [at(order[0]), at(order.at(-1))];
  if (last > first + 2 * resolution) {
    return [
      {
        code: 'massRises',
        message: 'the mass rises while it dries',
        help: 'check whether two columns are swapped, and whether the scale was zeroed; a spool in a dryer does not take up water',
        row: rows[order.at(-1) ?? 0] ?? 1,
      },
    ];
  }
  const lightest = Math.min(...masses);
  if (first - lightest <= largestLoss * (first - reelMass)) return [];
  return [
    {
      code: 'implausibleReading',
      message: `the mass falls by more than ${100 * largestLoss} %, more water than any filament holds`,
      help: 'check the digits and the decimal point, and whether two columns are swapped',
      row: rows[masses.indexOf(lightest)] ?? 1,
    },
  ];
}
