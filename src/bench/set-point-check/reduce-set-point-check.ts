import { partOffsets } from '../../knowledge/part-offset.ts';
import { failure, type Result, success } from '../../result.ts';
import { drawnQuantiles } from '../../statistics/coverage-interval.ts';
import { describe } from '../../statistics/describe.ts';
import { leastSquares } from '../../statistics/least-squares.ts';
import { randomSource } from '../../statistics/random.ts';
import { normalFactor, scatterOf } from '../../statistics/scatter.ts';
import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import { negativeReadings, outsideReadings, repeatedTable, tooManyValues } from '../sheet/reading-checks.ts';
import type { SetPointCheckRun } from './set-point-check-facts.ts';
import { type SetPoint, setPointsOf } from './set-points.ts';

/** K; what a thermometer shows and is off by where a run does not say (common practice, no source). */
const usual = { resolution: 0.1, accuracy: 2, within: 2 };
const fewestSettled = 3;
const draws = 4000;
/** K; a reference so far from the set temperature is at another place, or in another unit. */
const largestOffset = 100;

/**
 * How far a part is from its set temperature (the reference less the set temperature), with the dependence on it where there
 * are several, the highest temperature that it reached, and the time to settle. The offset is that at the middle of the
 * set temperatures, by a straight line through the means of the settled readings (least squares). The intervals cover the
 * scatter within a set temperature and about the line, the resolution of the thermometer and its largest error, which all
 * readings share, by the Monte Carlo method (JCGM 101:2008).
 */
export function reduceSetPointCheck(
  observations: Observations,
  run: SetPointCheckRun,
): Result<Reduction, readonly BenchProblem[]> {
  const problems = checkReadings(observations);
  if (problems.length > 0) return failure(problems);
  const points = setPointsOf(observations, run.settledWithin ?? usual.within);
  const unsettled = points.filter(({ readings }) => readings.length < fewestSettled);
  if (unsettled.length > 0) return failure(unsettled.map(tooFewSettled));
  const outcome = offsetDraws(points, run);
  const { checkedPart = 'nozzle' } = run;
  const slope = points.length < 3 ? [] : [result('offsetSlope', 'ratio', outcome.slope)];
  const offset = result(partOffsets[checkedPart], 'temperatureDifference', outcome.offset);
  const results = [
    offset,
    ...slope,
    result('reachedTemperature', 'temperature', outcome.reached),
    ...settlingTime(points),
  ];
  return success({
    method: 'setPointCheck',
    results,
    get curve() {
      return checkCurve(points, outcome);
    },
    warnings: checkWarnings(points, offset, slope[0], run),
  });
}

interface Outcome {
  readonly middle: number;
  readonly offset: Float64Array;
  readonly slope: Float64Array;
  readonly reached: Float64Array;
}

function offsetDraws(points: readonly SetPoint[], run: SetPointCheckRun): Outcome {
  const random = randomSource('setPointCheck');
  const { resolution, accuracy } = {
    resolution: run.thermometerResolution ?? usual.resolution,
    accuracy: run.thermometerAccuracy ?? usual.accuracy,
  };
  const middle = describe(points.map(({ set }) => set)).mean;
  const line = offsetLine(points, middle);
  const highest = points.at(-1)?.set ?? Number.NaN;
  const [offset, slope, reached] = [0, 1, 2].map(() => new Float64Array(draws)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let index = 0; index < draws; index++) {
    const shared = accuracy * (2 * random.uniform() - 1) + resolution * (random.uniform() - 0.5);
    const tilt = line.slope + line.slopeError * random.studentT(line.freedom);
    const level = line.offset + line.offsetError * random.studentT(line.freedom) + shared;
    offset[index] = level;
    slope[index] = tilt;
    reached[index] = highest + level + tilt * (highest - middle);
  }
  return { middle, offset, slope, reached };
}

/**
 * A straight line of offsets over set temperatures, about the middle; level with fewer than three of them. Offsets that
 * scatter by more than their readings explain widen it.
 */
function offsetLine(points: readonly SetPoint[], middle: number) {
  const offsets = points.map(({ set, readings }) => describe(readings).mean - set);
  const counts = points.map(({ readings }) => readings.length);
  const spare = counts.reduce((sum, count) => sum + count - 1, 0);
  const squares = points.reduce((sum, { readings }) => {
    const { count, standardDeviation } = describe(readings);
    return sum + (count - 1) * standardDeviation ** 2;
  }, 0);
  // A display that shows the same all the time is no surer than its step, which is drawn apart.
  const variance = Math.max(squares / spare, 1e-12);
  const fit = leastSquares(
    points.map(({ set }) => (points.length < 3 ? [1] : [1, set - middle])),
    offsets,
    counts.map((count) => count / variance),
  );
  const { coefficients, cofactors, ...rest } = fit.ok ? fit.value : noFit;
  const { widening, coverageFactor } = scatterOf(rest);
  const [offset = Number.NaN, slope = 0] = coefficients;
  const wider = (widening * coverageFactor) / normalFactor;
  const error = (index: number) => wider * Math.sqrt(cofactors[index]?.[index] ?? 0);
  return {
    offset,
    slope,
    offsetError: error(0),
    slopeError: error(1),
    freedom: spare,
  };
}

const noFit = { coefficients: [], cofactors: [], residualSquares: 0, degreesOfFreedom: 0 };

function result(quantity: string, dimension: Dimension, outcome: Float64Array): ReducedResult {
  const [low = 0, value = 0, high = 0] = drawnQuantiles(outcome, [0.025, 0.5, 0.975]).map((end) =>
    rounded(end),
  );
  return { quantity, dimension, value, interval: { low, high, coverage: 0.95 }, censored: null };
}

/** The longest time to settle: each lies between the last reading that had not settled and the next. */
function settlingTime(points: readonly SetPoint[]): ReducedResult[] {
  const all = points.flatMap(({ settled }) => settled ?? []);
  if (all.length === 0) return [];
  const after = Math.max(...all.map((each) => each.after));
  const by = Math.max(...all.map((each) => each.by));
  const at = (share: number) => rounded(after + share * (by - after));
  return [
    {
      quantity: 'settlingTime',
      dimension: 'time',
      value: at(0.5),
      interval: { low: at(0.025), high: at(0.975), coverage: 0.95 },
      censored: null,
    },
  ];
}

/** The reference against the set temperature, with the line through the offsets. */
function checkCurve(points: readonly SetPoint[], { middle, offset, slope }: Outcome): ReductionCurve {
  const line = points.map(({ set: x }) => {
    const all = offset.map((level, index) => x + level + (slope[index] ?? 0) * (x - middle));
    const [low = 0, y = 0, high = 0] = drawnQuantiles(all, [0.025, 0.5, 0.975]).map((end) => rounded(end));
    return { x, y, low, high };
  });
  return {
    x: { quantity: 'setTemperature', dimension: 'temperature' },
    y: { quantity: 'referenceTemperature', dimension: 'temperature' },
    readings: points.flatMap(({ set, readings }) => readings.map((y) => ({ x: set, y }))),
    fit: line.map(({ x, y }) => ({ x, y })),
    band: line.map(({ x, low, high }) => ({ x, low, high })),
    threshold: null,
    limits: [],
  };
}

function checkWarnings(
  points: readonly SetPoint[],
  offset: ReducedResult,
  slope: ReducedResult | undefined,
  run: SetPointCheckRun,
): string[] {
  const [first = Number.NaN, last = Number.NaN] = [points[0]?.set, points.at(-1)?.set];
  const change = slope === undefined ? 0 : slope.value * (last - first);
  const { low, high } = slope?.interval ?? { low: 0, high: 0 };
  const depends = low !== null && high !== null && (low > 0 || high < 0);
  return [
    ...(depends
      ? [
          `The offset changes by ${shown(rounded(change, 2), 'temperatureDifference')} from ${shown(first, 'temperature')} to ${shown(last, 'temperature')}: ${shown(rounded(offset.value, 3), 'temperatureDifference')} is that of the middle.`,
        ]
      : []),
    ...(points.length < 3
      ? ['Whether the offset depends on the set temperature takes three of them to tell.']
      : []),
    ...(run.thermometerAccuracy === undefined
      ? [`No accuracy of the thermometer is given: ${shownNumber(usual.accuracy)} K is taken.`]
      : []),
  ];
}

function tooFewSettled({ set, readings }: SetPoint): BenchProblem {
  return {
    code: 'tooFewSteps',
    message: `${readings.length} readings at a set temperature of ${shown(set, 'temperature')} had settled, but an offset needs ${fewestSettled}`,
    found: String(readings.length),
    help: 'wait until the reading no longer changes, and go on reading',
  };
}

function checkReadings(observations: Observations): BenchProblem[] {
  const { setTemperature = [], referenceTemperature = [], elapsedTime } = observations.columns;
  const far = setTemperature.findIndex(
    (set, index) => Math.abs((referenceTemperature[index] ?? Number.NaN) - set) > largestOffset,
  );
  // A part that is still warming up may be that far away.
  const isFar = far !== -1 && elapsedTime === undefined;
  return [
    ...outsideReadings(observations, 'setTemperature', [20, 600], 'a machine is set to 20 to 600 Cel'),
    ...outsideReadings(observations, 'referenceTemperature', [-20, 700], 'no part is that cold or hot'),
    ...(elapsedTime === undefined ? [] : negativeReadings(observations, 'elapsedTime')),
    ...repeatedTable(observations, 'setTemperature', 3),
    ...tooManyValues(observations, 'setTemperature'),
    ...(isFar
      ? [
          {
            code: 'implausibleReading' as const,
            message: `the reference is more than ${largestOffset} K from the set temperature`,
            help: 'check the units, and where the thermometer sat',
            row: observations.rows[far] ?? far + 1,
          },
        ]
      : []),
  ];
}
