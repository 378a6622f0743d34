import { type CheckedPart, partOffsets } from '../../knowledge/part-offset.ts';
import { failure, type Result, success } from '../../result.ts';
import { drawnQuantiles } from '../../statistics/coverage-interval.ts';
import { describe } from '../../statistics/describe.ts';
import { leastSquares } from '../../statistics/least-squares.ts';
import { randomSource } from '../../statistics/random.ts';
import { normalFactor, scatterOf } from '../../statistics/scatter.ts';
import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import { shown } from '../../units/wording.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { factProblems } from '../facts/fact-problems.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import { negativeReadings, outsideReadings, repeatedTable, tooManyValues } from '../sheet/reading-checks.ts';
import { type SetPointCheckRun, setPointCheckFacts } from './set-point-check-facts.ts';
import { type SetPoint, setPointsOf } from './set-points.ts';
import { instrumentOf, type SetScale, scaleOf } from './set-scale.ts';

const fewestSettled = 3;
const draws = 4000;
/** What the offset of humidity of a part is called; the others are not set to one. */
const humidityOffsets: Readonly<Partial<Record<CheckedPart, string>>> = {
  chamber: 'chamberHumidityOffset',
  dryer: 'dryerHumidityOffset',
};

/**
 * How far a part is from its set temperature or humidity (the reference less what is set), with the dependence on it where there
 * are several, the highest that it reached, and the time to settle. The offset is that at the middle of the
 * set temperatures, by a straight line through the means of the settled readings (least squares). The intervals cover the
 * scatter within a set temperature and about the line, the resolution of the thermometer and its largest error, which all
 * readings share, by the Monte Carlo method (JCGM 101:2008).
 */
export function reduceSetPointCheck(
  observations: Observations,
  run: SetPointCheckRun,
): Result<Reduction, readonly BenchProblem[]> {
  const scale = scaleOf(observations);
  const { checkedPart = 'nozzle' } = run;
  const quantity = scale.name === 'temperature' ? partOffsets[checkedPart] : humidityOffsets[checkedPart];
  if (quantity === undefined) return failure([noHumidity(checkedPart)]);
  const problems = [...factProblems(setPointCheckFacts, run), ...checkReadings(observations, scale)];
  if (problems.length > 0) return failure(problems);
  const points = setPointsOf(observations, scale, instrumentOf(scale, run));
  const unsettled = points.filter(({ readings }) => readings.length < fewestSettled);
  if (unsettled.length > 0) return failure(unsettled.map((point) => tooFewSettled(point, scale)));
  const outcome = offsetDraws(points, scale, run);
  const slope = points.length < 3 ? [] : [result('offsetSlope', 'ratio', outcome.slope)];
  const offset = result(quantity, scale.apart, outcome.offset);
  const results = [
    offset,
    ...slope,
    result(scale.reached, scale.dimension, outcome.reached),
    ...settlingTime(points),
  ];
  return success({
    method: 'setPointCheck',
    results,
    get curve() {
      return checkCurve(points, scale, outcome);
    },
    warnings: checkWarnings(points, scale, offset, slope[0], run),
  });
}

interface Outcome {
  readonly middle: number;
  readonly offset: Float64Array;
  readonly slope: Float64Array;
  readonly reached: Float64Array;
}

function offsetDraws(points: readonly SetPoint[], scale: SetScale, run: SetPointCheckRun): Outcome {
  const random = randomSource('setPointCheck');
  const { resolution, accuracy } = instrumentOf(scale, run);
  const middle = describe(points.map(({ set }) => set)).mean;
  const line = offsetLine(points, middle);
  const highest = points.at(-1)?.set ?? Number.NaN;
  const [offset, slope, reached] = [0, 1, 2].map(() => new Float64Array(draws)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const levers = leversOf(points, middle);
  // Readings that scatter less than the step of the display round alike (Widrow, Kollár, Quantization Noise, 2008, chapter 4).
  const blur = resolution * Math.exp(-2 * (Math.PI * (line.scatter / resolution)) ** 2);
  for (let index = 0; index < draws; index++) {
    let [level, tilt] = [line.offset + accuracy * (2 * random.uniform() - 1), line.slope];
    for (const lever of levers) {
      const rounding = blur * (random.uniform() - 0.5);
      level += rounding / levers.length;
      tilt += rounding * lever;
    }
    tilt += line.slopeError * random.studentT(line.freedom);
    level += line.offsetError * random.studentT(line.freedom);
    offset[index] = level;
    slope[index] = tilt;
    reached[index] = highest + level + tilt * (highest - middle);
  }
  return { middle, offset, slope, reached };
}

/** By how much the slope of a line changes with the offset at each set value; not at all where it is level. */
function leversOf(points: readonly SetPoint[], middle: number): number[] {
  const squares = points.reduce((sum, { set }) => sum + (set - middle) ** 2, 0);
  return points.map(({ set }) => (points.length < 2 ? 0 : (set - middle) / squares));
}

/**
 * A straight line of offsets over set temperatures, about the middle; through both where there are two. Offsets that
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
    points.map(({ set }) => (points.length < 2 ? [1] : [1, set - middle])),
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
    scatter: Math.sqrt(squares / spare),
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
function checkCurve(
  points: readonly SetPoint[],
  scale: SetScale,
  { middle, offset, slope }: Outcome,
): ReductionCurve {
  const line = points.map(({ set: x }) => {
    const all = offset.map((level, index) => x + level + (slope[index] ?? 0) * (x - middle));
    const [low = 0, y = 0, high = 0] = drawnQuantiles(all, [0.025, 0.5, 0.975]).map((end) => rounded(end));
    return { x, y, low, high };
  });
  return {
    x: { quantity: scale.set, dimension: scale.dimension },
    y: { quantity: scale.reference, dimension: scale.dimension },
    readings: points.flatMap(({ set, readings }) => readings.map((y) => ({ x: set, y }))),
    fit: line.map(({ x, y }) => ({ x, y })),
    band: line.map(({ x, low, high }) => ({ x, low, high })),
    threshold: null,
    limits: [],
  };
}

function checkWarnings(
  points: readonly SetPoint[],
  scale: SetScale,
  offset: ReducedResult,
  slope: ReducedResult | undefined,
  run: SetPointCheckRun,
): string[] {
  const { name, dimension, apart, instrument, usual } = scale;
  const { isAccuracyStated } = instrumentOf(scale, run);
  const [first = Number.NaN, last = Number.NaN] = [points[0]?.set, points.at(-1)?.set];
  const change = slope === undefined ? 0 : slope.value * (last - first);
  const { low, high } = slope?.interval ?? { low: 0, high: 0 };
  const depends = low !== null && high !== null && (low > 0 || high < 0);
  return [
    ...(depends
      ? [
          `The offset changes by ${shown(rounded(change, 2), apart)} from ${shown(first, dimension)} to ${shown(last, dimension)}: ${shown(rounded(offset.value, 3), apart)} is that of the middle.`,
        ]
      : []),
    ...(points.length < 3
      ? [`Whether the offset depends on the set ${name} takes three of them to tell.`]
      : []),
    ...(isAccuracyStated
      ? []
      : [`No accuracy of the ${instrument} is given: ${shown(usual.accuracy, apart)} is taken.`]),
  ];
}

function noHumidity(part: CheckedPart): BenchProblem {
  return {
    code: 'implausibleReading',
    message: `humidity is checked in a chamber or a dryer, not at a ${part}`,
    found: part,
    help: 'correct the part, or the columns',
  };
}

function tooFewSettled({ set, readings }: SetPoint, { name, dimension }: SetScale): BenchProblem {
  return {
    code: 'tooFewSteps',
    message: `${readings.length} readings at a set ${name} of ${shown(set, dimension)} had settled, but an offset needs ${fewestSettled}`,
    found: String(readings.length),
    help: 'wait until the reading no longer changes, and go on reading',
  };
}

function checkReadings(observations: Observations, scale: SetScale): BenchProblem[] {
  const { set, reference, settable, readable, farthest, apart } = scale;
  const { [set]: setTo = [], [reference]: read, elapsedTime } = observations.columns;
  if (read === undefined) return [mixedScales(scale)];
  const far = setTo.findIndex((value, index) => Math.abs((read[index] ?? Number.NaN) - value) > farthest);
  // A part that is still warming up may be that far away.
  const isFar = far !== -1 && elapsedTime === undefined;
  const within = ([low, high]: SetScale['settable']) => [low, high] as const;
  return [
    ...outsideReadings(observations, set, within(settable), settable[2]),
    ...outsideReadings(observations, reference, within(readable), readable[2]),
    ...(elapsedTime === undefined ? [] : negativeReadings(observations, 'elapsedTime')),
    ...repeatedTable(observations, set, 3),
    ...tooManyValues(observations, set),
    ...(isFar
      ? [
          {
            code: 'implausibleReading' as const,
            message: `the reference is more than ${shown(farthest, apart)} from what is set`,
            help: 'check the units, and where the instrument sat',
            row: observations.rows[far] ?? far + 1,
          },
        ]
      : []),
  ];
}

function mixedScales({ set, reference }: SetScale): BenchProblem {
  return {
    code: 'implausibleReading',
    message: `there is a column ${set}, but none of ${reference}`,
    help: 'check temperatures against temperatures, and humidity against humidity, in a sheet of its own',
  };
}
