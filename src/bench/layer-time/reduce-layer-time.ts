import { failure, type Result, success } from '../../result.ts';
import { randomSource } from '../../statistics/random.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { RunOf } from '../facts/fact.ts';
import { factProblems } from '../facts/fact-problems.ts';
import type { Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import {
  badGrades,
  notPositiveReadings,
  repeatedTable,
  tooFewValues,
  tooManyValues,
} from '../sheet/reading-checks.ts';
import { crossingResult, plottedLimits } from '../steps/crossing-result.ts';
import { gapCrossing } from '../steps/gap-crossing.ts';
import { acceptedGrade, acceptedQuality, gradeNoise } from '../steps/graded.ts';
import { seriesWarnings } from '../steps/series-warnings.ts';
import { type CourseDraws, courseBand, courseDraws } from '../steps/step-draws.ts';
import { seriesSteps } from '../steps/step-series.ts';

/** What is known of layer times besides the readings. */
export const layerTimeFacts = { acceptedGrade };

/**
 * The shortest layer time that holds shape, from grades of specimens at several layer times: where a quality that
 * never falls with the time reaches the lowest grade that passes. The interval covers the coarseness of grades, how
 * far specimens differ, and the gap between the last time that fails and the first that passes, by the Monte Carlo
 * method (JCGM 101:2008).
 */
export function reduceLayerTime(
  observations: Observations,
  run: RunOf<typeof layerTimeFacts>,
): Result<Reduction, readonly BenchProblem[]> {
  const problems = [
    ...factProblems(layerTimeFacts, run),
    ...notPositiveReadings(observations, ['layerTime'], 'write the time between the starts of two layers'),
    ...badGrades(observations),
    ...repeatedTable(observations, 'layerTime', 3),
    ...tooManyValues(observations, 'layerTime'),
    ...tooFewValues(
      observations,
      'layerTime',
      3,
      'add layer times until one fails clearly and one passes clearly',
    ),
  ];
  if (problems.length > 0) return failure(problems);
  const { layerTime: times = [], grade: grades = [] } = observations.columns;
  const steps = seriesSteps(times, grades);
  const level = acceptedQuality(run.acceptedGrade);
  const courses = courseDraws(steps, gradeNoise, 'rising', 'layerTime');
  const x = steps.map((step) => step.x);
  const crossings = crossingsOf(courses, x, level);
  const result = crossingResult('shortestLayerTime', 'time', crossings, x);
  return success({
    method: 'layerTime',
    results: [result],
    get curve(): ReductionCurve {
      return {
        x: { quantity: 'layerTime', dimension: 'time' },
        y: { quantity: 'grade', dimension: 'count' },
        readings: times.map((time, index) => ({ x: time, y: grades[index] ?? 0 })),
        ...courseBand(steps, courses, (value) => value),
        threshold: level,
        limits: plottedLimits([result]),
      };
    },
    warnings: seriesWarnings(steps, [result], 'time'),
  });
}

/** Where each course reaches the level; what it does between two times is not known, and a shape may fail all at once. */
function crossingsOf({ count, size, values }: CourseDraws, x: readonly number[], level: number) {
  const random = randomSource('layerTime gaps');
  return Float64Array.from({ length: count }, (_, draw) => {
    const bend = random.uniform();
    const gap = { bend, place: random.uniform(), straight: bend };
    return gapCrossing(x, values.subarray(draw * size, (draw + 1) * size), level, gap);
  });
}
