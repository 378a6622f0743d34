import { failure, type Result, success } from '../../result.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { factProblems } from '../facts/fact-problems.ts';
import { usualLengthResolution } from '../facts/instrument-facts.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import {
  badGrades,
  negativeReadings,
  notPositiveReadings,
  outsideReadings,
  repeatedTable,
  tooFewValues,
  tooManyValues,
} from '../sheet/reading-checks.ts';
import { crossingResult, plottedLimits } from '../steps/crossing-result.ts';
import { acceptedQuality, gradeNoise, isGraded } from '../steps/graded.ts';
import { seriesWarnings } from '../steps/series-warnings.ts';
import { crossingsOf, fallingCrossing, risingCrossing } from '../steps/step-crossing.ts';
import { courseBand, courseDraws } from '../steps/step-draws.ts';
import { type SeriesNoise, seriesSteps } from '../steps/step-series.ts';
import { type ContourLadderRun, contourLadderFacts } from './contour-ladder-facts.ts';
import { bringForward, humpedFit, humpWarnings, ripplesHumps } from './ripple-humps.ts';

/** Relative scatter of a ripple from one corner to the next (common practice, no source). */
const usualScatter = 0.1;
/** mm; a ripple that deep is a step between layers, or another unit. */
const deepestRipple = 5;

interface Series {
  readonly acceleration: number | null;
  readonly speeds: readonly number[];
  readonly readings: readonly number[];
}

/**
 * The contour speed up to which a surface is accepted, from the amplitude of the ripple behind a corner, or from
 * grades: where an amplitude that grows with the speed reaches the accepted one. What falls again past a peak, as at a
 * resonance, is no margin. Where the ladder was run at several accelerations, each has a result of its own. The interval
 * covers the gauge, the scatter from corner to corner and the gap between speeds, by the Monte Carlo method (JCGM 101:2008).
 */
export function reduceContourLadder(
  observations: Observations,
  run: ContourLadderRun,
): Result<Reduction, readonly BenchProblem[]> {
  const problems = [
    ...factProblems(contourLadderFacts, run),
    ...checkLadder(observations),
    ...checkRipple(observations, run),
  ];
  if (problems.length > 0) return failure(problems);
  const all = seriesOf(observations);
  const short = all.flatMap(({ speeds }) =>
    tooFewValues(
      { columns: { contourSpeed: speeds }, rows: [] },
      'contourSpeed',
      4,
      'add speeds, at every acceleration, until the ripple is clearly too deep',
    ),
  );
  if (short.length > 0) return failure(short);
  const reduced = all.map((series) => reduceSeries(series, run, isGraded(observations)));
  const results = reduced.map(({ result }) => result);
  return success({
    method: 'contourLadder',
    results,
    get curve() {
      return reduced[0]?.curve() ?? null;
    },
    warnings: [...new Set(reduced.flatMap(({ warnings }) => warnings))],
  });
}

function reduceSeries({ acceleration, speeds, readings }: Series, run: ContourLadderRun, graded: boolean) {
  const resolution = run.lengthResolution ?? usualLengthResolution;
  // A ripple below half a step of the gauge reads as 0.
  const measured = (reading: number) => Math.log(Math.max(reading, resolution / 2));
  const steps = seriesSteps(speeds, graded ? readings : readings.map(measured));
  const noise: SeriesNoise = graded
    ? gradeNoise
    : { usualScatter, resolution: ({ mean }) => Math.min(1, resolution / Math.exp(mean)) };
  const worse = graded ? -1 : 1;
  const humps = ripplesHumps(steps, noise, worse);
  const courses = courseDraws(steps, noise, humpedFit(steps, humps, worse), 'contourLadder');
  const x = steps.map((step) => step.x);
  const level = graded ? acceptedQuality(run.acceptedGrade) : Math.log(run.acceptedRipple ?? Number.NaN);
  const crossing = graded ? fallingCrossing : risingCrossing;
  const crossings = crossingsOf(courses, x, level, crossing);
  bringForward(crossings, x, humps);
  const found = crossingResult('contourSpeed', 'speed', crossings, x);
  const result: ReducedResult = acceleration === null ? found : { ...found, at: { acceleration } };
  const shown = (value: number) => (graded ? value : Math.exp(value));
  const curve = (): ReductionCurve => ({
    x: { quantity: 'contourSpeed', dimension: 'speed' },
    y: graded
      ? { quantity: 'grade', dimension: 'count' }
      : { quantity: 'rippleAmplitude', dimension: 'length' },
    readings: speeds.map((speed, index) => ({ x: speed, y: readings[index] ?? 0 })),
    ...courseBand(steps, courses, shown),
    threshold: shown(level),
    limits: plottedLimits([result]),
  });
  return {
    result,
    curve,
    warnings: [...humpWarnings(steps, humps, result), ...seriesWarnings(steps, [result], 'speed')],
  };
}

/** The readings by acceleration, ascending. */
function seriesOf({ columns, rows }: Observations): Series[] {
  const { contourSpeed = [], acceleration, rippleAmplitude, grade } = columns;
  const readings = rippleAmplitude ?? grade ?? [];
  if (acceleration === undefined) return [{ acceleration: null, speeds: contourSpeed, readings }];
  const values = [...new Set(acceleration)].sort((a, b) => a - b);
  return values.map((value) => {
    const chosen = rows.flatMap((_, index) => (acceleration[index] === value ? index : []));
    return {
      acceleration: value,
      speeds: chosen.map((index) => contourSpeed[index] ?? Number.NaN),
      readings: chosen.map((index) => readings[index] ?? Number.NaN),
    };
  });
}

function checkLadder(observations: Observations): BenchProblem[] {
  const { acceleration, rippleAmplitude } = observations.columns;
  const positive = ['contourSpeed', ...(acceleration === undefined ? [] : ['acceleration'])];
  return [
    ...notPositiveReadings(observations, positive, 'write the commanded value'),
    ...(rippleAmplitude === undefined ? [] : negativeReadings(observations, 'rippleAmplitude')),
    ...outsideReadings(
      observations,
      'rippleAmplitude',
      [0, deepestRipple],
      `no ripple is deeper than ${deepestRipple} mm`,
    ),
    ...badGrades(observations),
    ...repeatedTable(observations, 'contourSpeed', 4),
    ...tooManyValues(observations, 'contourSpeed'),
  ];
}

function checkRipple({ columns }: Observations, { acceptedRipple }: ContourLadderRun): BenchProblem[] {
  if (columns.rippleAmplitude === undefined || (acceptedRipple !== undefined && acceptedRipple > 0))
    return [];
  return [
    {
      code: 'missingFact',
      message: 'a contour ladder with measured ripples needs an accepted ripple above 0',
      help: 'say which amplitude is accepted, such as 0.02 mm',
    },
  ];
}
