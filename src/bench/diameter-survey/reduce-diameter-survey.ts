import { failure, type Result, success } from '../../result.ts';
import { drawnQuantiles } from '../../statistics/coverage-interval.ts';
import { describe } from '../../statistics/describe.ts';
import { randomSource } from '../../statistics/random.ts';
import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { usualLengthResolution } from '../facts/instrument-facts.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import {
  negativeReadings,
  notPositiveReadings,
  outsideReadings,
  repeatedTable,
  tooFewValues,
} from '../sheet/reading-checks.ts';
import { type DiameterSurveyRun, usualLengthAccuracy } from './diameter-survey-facts.ts';
import { diameterWarnings } from './diameter-warnings.ts';
import type { Gauge, SurveyPlace } from './survey-place.ts';

const draws = 20_000;
/** A reading that far from the nominal diameter, as a factor, is of another filament or in another unit. */
const largestFactor = 1.4;

/**
 * What a filament is really like, from its thickness across two axes at places along it: the mean diameter, its standard
 * deviation along the filament, the ovality (difference of the axes, as the out-of-roundness of ISO 11922-1; the axes
 * need not be the extreme ones, so the largest may be more), and the flow error: by how much the cross section π·d₁·d₂/4
 * exceeds that of the nominal diameter. The intervals cover the scatter along the filament, the resolution of the gauge
 * and its largest error, which all readings share, by the Monte Carlo method (JCGM 101:2008).
 */
export function reduceDiameterSurvey(
  observations: Observations,
  run: DiameterSurveyRun,
): Result<Reduction, readonly BenchProblem[]> {
  const nominal = run.filamentDiameter ?? Number.NaN;
  const problems = checkSurvey(observations, nominal);
  if (problems.length > 0) return failure(problems);
  const places = surveyPlaces(observations, nominal);
  const gauge = {
    resolution: run.lengthResolution ?? usualLengthResolution,
    accuracy: run.lengthAccuracy ?? usualLengthAccuracy,
  };
  const results = surveyResults(places, nominal, gauge);
  return success({
    method: 'diameterSurvey',
    results,
    get curve() {
      return surveyCurve(observations, places, results[0]);
    },
    warnings: diameterWarnings({ places, nominal, tolerance: run.diameterTolerance ?? null, gauge, results }),
  });
}

/** Places in the order in which they lie along the filament. */
function surveyPlaces({ columns }: Observations, nominal: number): SurveyPlace[] {
  const { position = [], firstDiameter = [], secondDiameter = [] } = columns;
  return position
    .map((at, index) => {
      const [first, second] = [firstDiameter[index] ?? Number.NaN, secondDiameter[index] ?? Number.NaN];
      return {
        position: at,
        diameter: (first + second) / 2,
        ovality: Math.abs(first - second),
        areaError: (first * second) / nominal ** 2 - 1,
      };
    })
    .sort((one, other) => one.position - other.position);
}

function surveyResults(places: readonly SurveyPlace[], nominal: number, gauge: Gauge): ReducedResult[] {
  const random = randomSource('diameterSurvey');
  const diameters = describe(places.map(({ diameter }) => diameter));
  const ovalities = describe(places.map(({ ovality }) => ovality));
  const areas = describe(places.map(({ areaError }) => areaError));
  const { count } = diameters;
  // Two readings a place halve the variance of rounding.
  const rounding = gauge.resolution / Math.sqrt(24);
  const alike = diameters.standardDeviation < gauge.resolution / 2 ? 1 : 1 / Math.sqrt(count);
  const outcome = {
    mean: new Float64Array(draws),
    spread: new Float64Array(draws),
    ovality: new Float64Array(draws),
    area: new Float64Array(draws),
  };
  for (let index = 0; index < draws; index++) {
    const shared =
      gauge.accuracy * (2 * random.uniform() - 1) + gauge.resolution * (random.uniform() - 0.5) * alike;
    const along = random.studentT(count - 1) / Math.sqrt(count);
    outcome.mean[index] = diameters.mean + along * diameters.standardDeviation + shared;
    outcome.area[index] =
      areas.mean +
      (random.studentT(count - 1) / Math.sqrt(count)) * areas.standardDeviation +
      (2 * shared) / nominal;
    const freedom = count - 1;
    const variance = (freedom * diameters.standardDeviation ** 2) / (2 * random.gamma(freedom / 2));
    outcome.spread[index] = Math.sqrt(Math.max(0, variance - rounding ** 2));
    const ovality =
      ovalities.mean + (random.studentT(count - 1) / Math.sqrt(count)) * ovalities.standardDeviation;
    outcome.ovality[index] = Math.max(0, ovality + gauge.resolution * (random.uniform() - 0.5) * alike);
  }
  return [
    result('meanDiameter', 'length', outcome.mean),
    result('diameterSpread', 'length', outcome.spread),
    result('ovality', 'length', outcome.ovality),
    result('flowError', 'ratio', outcome.area),
  ];
}

function result(quantity: string, dimension: Dimension, outcome: Float64Array): ReducedResult {
  const [low = 0, middle = 0, high = 0] = drawnQuantiles(outcome, [0.025, 0.5, 0.975]);
  return {
    quantity,
    dimension,
    value: rounded(middle),
    interval: { low: rounded(low), high: rounded(high), coverage: 0.95 },
    censored: null,
  };
}

/** The thickness along the filament; the mean and its interval as a level line with its band. */
function surveyCurve(
  { columns }: Observations,
  places: readonly SurveyPlace[],
  mean: ReducedResult | undefined,
): ReductionCurve {
  const { position = [], firstDiameter = [], secondDiameter = [] } = columns;
  const { low, high } = mean?.interval ?? { low: null, high: null };
  return {
    x: { quantity: 'position', dimension: 'length' },
    y: { quantity: 'diameter', dimension: 'length' },
    readings: position.flatMap((x, index) => [
      { x, y: firstDiameter[index] ?? 0 },
      { x, y: secondDiameter[index] ?? 0 },
    ]),
    fit: places.map(({ position: x, diameter }) => ({ x, y: rounded(diameter) })),
    band: low === null || high === null ? [] : places.map(({ position: x }) => ({ x, low, high })),
    threshold: null,
    limits: [],
  };
}

function checkSurvey(observations: Observations, nominal: number): BenchProblem[] {
  if (!(nominal > 0 && Number.isFinite(nominal))) {
    return [
      {
        code: 'badSetting',
        message: `the filament diameter cannot be ${nominal}`,
        help: 'give the nominal diameter, such as 1.75 mm',
      },
    ];
  }
  const columns = ['firstDiameter', 'secondDiameter'];
  const range = [nominal / largestFactor, nominal * largestFactor] as const;
  return [
    ...notPositiveReadings(observations, columns, 'delete the row if the place was not measured'),
    ...negativeReadings(observations, 'position'),
    ...columns.flatMap((name) =>
      outsideReadings(observations, name, range, `the profile says ${nominal} mm`),
    ),
    ...repeatedTable(observations, 'position', 3),
    ...tooFewValues(observations, 'position', 5, 'measure ten or more places along several metres'),
  ];
}
