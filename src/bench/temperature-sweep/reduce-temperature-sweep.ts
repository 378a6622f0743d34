import { failure, type Result, success } from '../../result.ts';
import { randomSource } from '../../statistics/random.ts';
import { smoothCurves } from '../../statistics/smooth-curves.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { factProblems } from '../facts/fact-problems.ts';
import type { Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import {
  badGrades,
  notPositiveReadings,
  outsideReadings,
  repeatedTable,
  tooFewValues,
  tooManyValues,
} from '../sheet/reading-checks.ts';
import { plottedLimits } from '../steps/crossing-result.ts';
import { acceptedQuality, gradeNoise, isGraded } from '../steps/graded.ts';
import { seriesWarnings } from '../steps/series-warnings.ts';
import { courseBand } from '../steps/step-draws.ts';
import { possibleVariances, seriesSteps } from '../steps/step-series.ts';
import { topWarnings } from './sweep-top.ts';
import { sweepWindow } from './sweep-window.ts';
import { type TemperatureSweepRun, temperatureSweepFacts } from './temperature-sweep-facts.ts';

/** Share of the best strength that must be left where a run states none (common practice, no source). */
const usualAcceptedStrength = 0.9;

/** JCGM 101:2008, 7.2 asks for some 10 000 draws a digit of the ends; three digits of a bench reading need fewer. */
const draws = 1440;

/** Relative scatter of bond strengths from one specimen to the next (common practice, no source). */
const usualScatter = 0.06;

/**
 * The window of nozzle temperatures in which a bond is strong enough, from broken or graded specimens: the stretch around
 * the best temperature in which the accepted share of the best strength is left, so that errors of the force gauge and of
 * the cross section cancel. Grades must reach the lowest that passes. Any smooth curve counts, with one peak or more. The
 * intervals cover the scatter of specimens and the gap between temperatures, by the Monte Carlo method (JCGM 101:2008).
 */
export function reduceTemperatureSweep(
  observations: Observations,
  run: TemperatureSweepRun,
): Result<Reduction, readonly BenchProblem[]> {
  const share = run.acceptedStrength ?? usualAcceptedStrength;
  const problems = [
    ...factProblems(temperatureSweepFacts, run),
    ...checkSweep(observations),
    ...checkShare(share),
  ];
  if (problems.length > 0) return failure(problems);
  const graded = isGraded(observations);
  const { nozzleTemperature: temperatures = [], bondStrength = [], grade = [] } = observations.columns;
  const readings = graded ? grade : bondStrength;
  const steps = seriesSteps(temperatures, graded ? readings : readings.map(Math.log));
  const noise = graded ? gradeNoise : { usualScatter, resolution: () => 0 };
  const beyond = steps.map(({ mean }) => (graded ? beyondScale(mean) : unmoved));
  const measured = {
    x: steps.map((step) => step.x),
    y: steps.map(({ mean }, index) => mean + (beyond[index]?.shift ?? 0)),
    variances: possibleVariances(steps, noise).map((own) =>
      own.map((variance, index) => variance + (beyond[index]?.variance ?? 0)),
    ),
  };
  const curves = smoothCurves(measured, draws, randomSource('temperatureSweep'));
  const level = (best: number) => (graded ? acceptedQuality(run.acceptedGrade) : best + Math.log(share));
  const results = sweepWindow(curves, measured.x, level);
  return success({
    method: 'temperatureSweep',
    results,
    get curve(): ReductionCurve {
      const shown = (value: number) => (graded ? value : Math.exp(value));
      const { grid, values, count } = curves;
      const points = grid.map((x) => ({ x }));
      const band = courseBand(points, { values, count, size: grid.length }, shown);
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
    warnings: [
      ...topWarnings(curves, level, graded ? steps : null),
      ...seriesWarnings(steps, results, 'temperature'),
    ],
  });
}

const unmoved = { shift: 0, variance: 0 };

/**
 * How much further off a quality may be whose grades are all the worst or all the best: far worse than useless has no grade
 * of its own, and better than faultless has little room (common practice, no source).
 */
function beyondScale(meanGrade: number): typeof unmoved {
  if (meanGrade === 1) return { shift: -1.5, variance: 1.5 ** 2 };
  return meanGrade === 5 ? { shift: 0.25, variance: 0.25 ** 2 } : unmoved;
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
