import { quantile, sortedDraws, symmetricInterval } from '../../statistics/coverage-interval.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import { rounded } from '../../units/rounded.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import { crossingResult } from '../steps/crossing-result.ts';
import type { DryingData } from './drying-data.ts';
import { massAt, type PossibleDrying } from './drying-fit.ts';

/** Largest uncertainty of the dry mass, as a share of the water lost, with which a curve counts as flattened. */
const flattened = 0.25;
const gridIntervals = 60;
const curvesForBand = 500;

const method = 'dryingCurve';

const hours = (time: number) => formatQuantity(time, 'time', { unit: 'h', significantDigits: 3 });

/** What the possible dryings say of the time to the asked moisture. */
export function dryingResults(data: DryingData, dryings: readonly PossibleDrying[] | null): Reduction {
  const tested = [...new Set(data.times)].sort((a, b) => a - b);
  const last = tested.at(-1) ?? Number.NaN;
  if (dryings === null) {
    return { method, results: [stillDrying(last)], curve: null, warnings: [noExponential(data)] };
  }
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
  const times = dryings.map((drying) => timeTo(drying, data));
  const time = crossingResult('dryingTime', 'time', times, tested);
  return {
    method,
    results: [time, dryMassResult(masses, data.reelMass)],
    get curve() {
      return dryingCurveOf(data, dryings, time);
    },
    warnings: dryingWarnings(data, time, last),
  };
}

/** When the water left is the asked share of the dry filament. */
function timeTo(
  { dryMass, water, timeConstant, shape }: PossibleDrying,
  { residualMoisture, reelMass }: DryingData,
) {
  const asked = residualMoisture * (dryMass - reelMass);
  return water <= asked ? Number.NEGATIVE_INFINITY : timeConstant * shape.elapsedAt(asked / water);
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
  const points = Array.from({ length: gridIntervals + 1 }, (_, index) => {
    const x = rounded((index * last) / gridIntervals);
    const all = sortedDraws(some.map((drying) => massAt(drying, x)));
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
