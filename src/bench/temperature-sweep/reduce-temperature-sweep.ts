import { failure, type Result, success } from '../../result.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import {
  badGrades,
  notPositiveReadings,
  outsideReadings,
  repeatedTable,
  tooFewValues,
  tooManyValues,
} from '../sheet/reading-checks.ts';
import { crossingResult, plottedLimits } from '../steps/crossing-result.ts';
import { acceptedQuality, gradeNoise, isGraded } from '../steps/graded.ts';
import { seriesWarnings } from '../steps/series-warnings.ts';
import { fallingCrossing, risingCrossing } from '../steps/step-crossing.ts';
import { type CourseDraws, courseBand, courseDraws } from '../steps/step-draws.ts';
import { type SeriesStep, seriesSteps } from '../steps/step-series.ts';
import { peakLevel } from './peak-level.ts';
import type { TemperatureSweepRun } from './temperature-sweep-facts.ts';

/** Share of the best strength that must be left where a run states none (common practice, no source). */
const usualAcceptedStrength = 0.9;

/** Relative scatter of bond strengths from one specimen to the next (common practice, no source). */
const usualScatter = 0.06;

/**
 * The window of nozzle temperatures in which a bond is strong enough, from broken or graded specimens. The strength
 * rises to a best temperature and falls beyond; the ends are where it passes the accepted share of the best, so that
 * errors of the force gauge and of the cross section cancel. Grades must reach the lowest that passes. The intervals
 * cover the scatter of specimens and the gap between temperatures, by the Monte Carlo method (JCGM 101:2008).
 */
export function reduceTemperatureSweep(
  observations: Observations,
  run: TemperatureSweepRun,
): Result<Reduction, readonly BenchProblem[]> {
  const share = run.acceptedStrength ?? usualAcceptedStrength;
  const problems = [...checkSweep(observations), ...checkShare(share)];
  if (problems.length > 0) return failure(problems);
  const graded = isGraded(observations);
  const { nozzleTemperature: temperatures = [], bondStrength = [], grade = [] } = observations.columns;
  const readings = graded ? grade : bondStrength;
  const steps = seriesSteps(temperatures, graded ? readings : readings.map(Math.log));
  const noise = graded ? gradeNoise : { usualScatter, resolution: () => 0 };
  const courses = courseDraws(steps, noise, 'peaked', 'temperatureSweep');
  const x = steps.map((step) => step.x);
  const level = (means: Float64Array, peak: number) =>
    graded ? acceptedQuality(run.acceptedGrade) : peakLevel(x, means, peak) + Math.log(share);
  const results = window(steps, courses, level);
  return success({
    method: 'temperatureSweep',
    results,
    get curve(): ReductionCurve {
      const shown = (value: number) => (graded ? value : Math.exp(value));
      const band = courseBand(steps, courses, shown);
      const best = Math.max(...band.fit.map(({ y }) => y));
      return {
        x: { quantity: 'nozzleTemperature', dimension: 'temperature' },
        y: graded
          ? { quantity: 'grade', dimension: 'count' }
          : { quantity: 'bondStrength', dimension: 'pressure' },
        readings: temperatures.map((x, index) => ({ x, y: readings[index] ?? 0 })),
        ...band,
        threshold: graded ? acceptedQuality(run.acceptedGrade) : share * best,
        limits: plottedLimits(results),
      };
    },
    warnings: seriesWarnings(steps, results, 'temperature'),
  });
}

/** Both ends of the window; a course that nowhere reaches the level has none and leaves both ends at its peak. */
function window(
  steps: readonly SeriesStep[],
  { count, size, drawn, values, peaks, bows }: CourseDraws,
  level: (means: Float64Array, peak: number) => number,
): ReducedResult[] {
  const x = steps.map((step) => step.x);
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  for (let draw = 0; draw < count; draw++) {
    const [row, peak, bow] = [draw * size, peaks[draw] ?? 0, bows[draw] ?? 0];
    const accepted = level(drawn.subarray(row, row + size), peak);
    const top = x[peak] ?? Number.NaN;
    low[draw] = Math.min(top, risingCrossing(x, values, accepted, bow, { row, first: 0, end: peak + 1 }));
    high[draw] = Math.max(top, fallingCrossing(x, values, accepted, bow, { row, first: peak, end: size }));
  }
  return [
    crossingResult('lowestNozzleTemperature', 'temperature', low, x),
    crossingResult('highestNozzleTemperature', 'temperature', high, x),
  ];
}

function checkSweep(observations: Observations): BenchProblem[] {
  const strengths = observations.columns.bondStrength === undefined ? [] : ['bondStrength'];
  return [
    ...notPositiveReadings(observations, strengths, 'delete the row if the specimen broke before the test'),
    ...badGrades(observations),
    ...outsideReadings(
      observations,
      'nozzleTemperature',
      [100, 600],
      'a nozzle melts plastics between 100 and 600 Cel',
    ),
    ...repeatedTable(observations, 'nozzleTemperature', 4),
    ...tooManyValues(observations, 'nozzleTemperature'),
    ...tooFewValues(observations, 'nozzleTemperature', 4, 'add temperatures on both sides of the best'),
    ...nothingPasses(observations),
  ];
}

function nothingPasses({ columns }: Observations): BenchProblem[] {
  const grades = columns.grade ?? [];
  if (grades.length === 0 || grades.some((grade) => grade > 2)) return [];
  return [
    {
      code: 'nothingPasses',
      message: 'no specimen has a grade above 2, so there is no window',
      help: 'dry the filament, check the machine, and sweep again; check whether 1 was taken as the best grade',
    },
  ];
}

function checkShare(share: number): BenchProblem[] {
  if (share > 0.3 && share < 1) return [];
  return [
    {
      code: 'badSetting',
      message: `the accepted strength cannot be ${share}`,
      found: String(share),
      help: 'give a share between 30 % and 100 %, such as 90 %',
    },
  ];
}
