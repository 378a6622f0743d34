import { quantile, sortedDraws, symmetricInterval } from '../../statistics/coverage-interval.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import { rounded } from '../../units/rounded.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import { crossingResult } from '../steps/crossing-result.ts';
import type { DryingData } from './drying-data.ts';
import { massesAt, type PossibleDrying, type PossibleDryings } from './drying-fit.ts';

/** Largest uncertainty of the dry mass, as a share of the water lost, with which a curve counts as flattened. */
const flattened = 0.25;
/** Within which relative share of the asked water a time is found, and steps at most. */
const [settled, mostSteps] = [1e-5, 40];
const gridIntervals = 60;
const curvesForBand = 500;

const method = 'dryingCurve';

const hours = (time: number) => formatQuantity(time, 'time', { unit: 'h', significantDigits: 3 });

/** What the possible dryings say of the time to the asked moisture. */
export function dryingResults(data: DryingData, possible: PossibleDryings | null): Reduction {
  const tested = [...new Set(data.times)].sort((a, b) => a - b);
  const last = tested.at(-1) ?? Number.NaN;
  if (possible === null) {
    return { method, results: [stillDrying(last)], curve: null, warnings: [noExponential(data)] };
  }
  const { dryings, probabilities } = possible;
  const masses = sortedDraws(dryings.map(({ dryMass }) => dryMass));
  const dry = symmetricInterval(masses, 0.95);
  const loss = Math.max(...data.masses) - quantile(masses, 0.5);
  if (!(dry.high - dry.low <= 2 * flattened * loss)) {
    return {
      method,
      results: [stillDrying(last)],
      get curve() {
        return dryingCurveOf(data, dryings, null);
      },
      warnings: [notFlat(last)],
    };
  }
  const times = dryings.map(dryingTimes(data));
  const time = crossingResult('dryingTime', 'time', times, tested);
  return {
    method,
    results: [time, dryMassResult(masses, data.reelMass)],
    get curve() {
      return dryingCurveOf(data, dryings, time);
    },
    warnings: [...courseWarnings(probabilities, time), ...dryingWarnings(data, time, last)],
  };
}

/** Finds when the water left is the asked share of the dry filament, one drying after the other. */
function dryingTimes({ residualMoisture, reelMass }: DryingData) {
  const [point, share, left] = [new Float64Array(3), new Float64Array(1), new Float64Array(1)];
  return ({ dryMass, water, last, family, point: [constant, first, second] }: PossibleDrying): number => {
    const asked = Math.log((residualMoisture * (dryMass - reelMass)) / water);
    if (!(asked < 0)) return Number.NEGATIVE_INFINITY;
    [point[0], point[1], point[2]] = [constant, first, second];
    return (
      last *
      fallsTo(asked, (time) => {
        share[0] = time;
        family.putLeft(point, share, left);
        return Math.log(Math.max(left[0] ?? 0, Number.MIN_VALUE));
      })
    );
  };
}

/** Where a function that falls from 0 reaches a level on 0 to 1, or else Infinity, by the rule of false position. */
function fallsTo(level: number, value: (at: number) => number): number {
  let [low, high, below, above] = [0, 1, -level, value(1) - level];
  if (above > 0) return Number.POSITIVE_INFINITY;
  for (let step = 0; step < mostSteps; step++) {
    const at = (low * above - high * below) / (above - below);
    const found = value(at) - level;
    if (Math.abs(found) < settled) return at;
    // Halving the end that stays keeps both ends moving (the Illinois method; Dowell and Jarratt, BIT 11 (1971) 168).
    if (found > 0) {
      low = at;
      below = found;
      above /= 2;
    } else {
      high = at;
      above = found;
      below /= 2;
    }
  }
  return (low + high) / 2;
}

function stillDrying(last: number): ReducedResult {
  return {
    quantity: 'dryingTime',
    dimension: 'time',
    value: last,
    interval: { low: null, high: null, coverage: 0.95 },
    censored: 'above',
  };
}

function dryMassResult(masses: Float64Array, reelMass: number): ReducedResult {
  const { low, high } = symmetricInterval(masses, 0.95);
  return {
    quantity: 'dryMass',
    dimension: 'mass',
    value: rounded(quantile(masses, 0.5) - reelMass),
    interval: { low: rounded(low - reelMass), high: rounded(high - reelMass), coverage: 0.95 },
    censored: null,
  };
}

function noExponential({ masses, resolution }: DryingData): string {
  return Math.max(...masses) - Math.min(...masses) < 2 * resolution
    ? 'The mass changes by less than the scale can show: the spool was dry already, or the scale is too coarse.'
    : 'No drying curve fits these readings: weigh more often, and go on until the mass no longer falls.';
}

function notFlat(last: number): string {
  return `After ${hours(last)} the mass is still falling, so the dry mass is not known: go on drying until several readings agree.`;
}

/** Probability beyond which a course is told. */
const told = 0.9;

/** Above these a second stage that cannot be ruled out is told. */
const [leastProbability, largestRelativeWidth] = [0.3, 0.2];

function courseWarnings(
  { twoStages, lateStart }: PossibleDryings['probabilities'],
  { value, interval: { low, high } }: ReducedResult,
): string[] {
  const isWide = low !== null && high !== null && high - low > largestRelativeWidth * value;
  return [
    ...(twoStages > leastProbability && twoStages <= told && isWide
      ? [
          'The readings do not rule out a second, slower stage of drying, which makes the interval wide: go on weighing until several readings agree, on a finer scale if there is one.',
        ]
      : []),
    ...(twoStages > told
      ? [
          'The spool dries in two stages, fast and slow, and the interval allows for that: go on weighing well past the drying time, since water that comes out more slowly still would not show.',
        ]
      : []),
    ...(lateStart > told
      ? [
          'The mass begins to fall late, as it does while a reel warms up: the drying time includes that, and holds for a reel and a dryer that start as cold.',
        ]
      : []),
  ];
}

function dryingWarnings({ reelMass }: DryingData, { censored }: ReducedResult, last: number): string[] {
  return [
    ...(censored === 'above'
      ? [
          `The wanted moisture is not reached within ${hours(last)}, and nothing is extrapolated: go on drying.`,
        ]
      : []),
    ...(censored === 'below'
      ? ['The wanted moisture was reached before the second reading: weigh earlier.']
      : []),
    ...(reelMass === 0
      ? [
          'The mass of the empty reel is not given: the residual moisture is taken as a share of filament and reel together, so the time comes out slightly too short.',
        ]
      : []),
  ];
}

/** Mass against time with the fit, and the mass at which the asked moisture is left. */
function dryingCurveOf(
  { times, masses, residualMoisture, reelMass }: DryingData,
  dryings: readonly PossibleDrying[],
  time: ReducedResult | null,
): ReductionCurve {
  const last = Math.max(...times);
  const some = dryings.filter(
    (_, index) => index % Math.max(1, Math.floor(dryings.length / curvesForBand)) === 0,
  );
  const grid = Array.from({ length: gridIntervals + 1 }, (_, index) =>
    rounded((index * last) / gridIntervals),
  );
  const curves = some.map((drying) => massesAt(drying, grid));
  const points = grid.map((x, index) => {
    const all = sortedDraws(curves.map((masses) => masses[index] ?? Number.NaN));
    const [low = 0, y = 0, high = 0] = [0.025, 0.5, 0.975].map((share) => rounded(quantile(all, share)));
    return { x, y, low, high };
  });
  const dry = quantile(sortedDraws(some.map(({ dryMass }) => dryMass)), 0.5);
  const { low, high } = time?.interval ?? { low: null, high: null };
  return {
    x: { quantity: 'elapsedTime', dimension: 'time' },
    y: { quantity: 'mass', dimension: 'mass' },
    readings: times.map((x, index) => ({ x, y: masses[index] ?? 0 })),
    fit: points.map(({ x, y }) => ({ x, y })),
    band: points.map(({ x, low: bottom, high: top }) => ({ x, low: bottom, high: top })),
    threshold: time === null ? null : rounded(dry + residualMoisture * (dry - reelMass)),
    limits: time === null || low === null || high === null ? [] : [{ value: time.value, low, high }],
  };
}
