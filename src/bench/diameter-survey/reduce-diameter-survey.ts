import { failure, type Result, success } from '../../result.ts';
import { drawnQuantiles } from '../../statistics/coverage-interval.ts';
import { describe } from '../../statistics/describe.ts';
import { randomSource } from '../../statistics/random.ts';
import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { factProblems } from '../facts/fact-problems.ts';
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
import { type DiameterSurveyRun, diameterSurveyFacts, usualLengthAccuracy } from './diameter-survey-facts.ts';
import { diameterWarnings } from './diameter-warnings.ts';
import { ovalityResult } from './ovality.ts';
import { type ReadingNoise, readingNoise } from './reading-noise.ts';
import { type Gauge, type SurveyPlace, surveyPlaces } from './survey-place.ts';

/** JCGM 101:2008, 7.2 asks for some 10 000 draws a digit of the ends; three digits of a bench reading need fewer. */
const draws = 4000;
/** A reading that far from the nominal diameter, as a factor, is of another filament or in another unit. */
const largestFactor = 1.4;

/**
 * What a filament is really like, from its thickness across two axes at places along it: the mean diameter, its standard
 * deviation along the filament, the ovality (see `ovalityResult`), and the flow error: by how much the cross section
 * π·d₁·d₂/4 exceeds that of the nominal diameter. The intervals cover the scatter along the filament, the noise of reading,
 * the resolution of the gauge and its largest error, which all readings share, by the Monte Carlo method (JCGM 101:2008).
 */
export function reduceDiameterSurvey(
  observations: Observations,
  run: DiameterSurveyRun,
): Result<Reduction, readonly BenchProblem[]> {
  const nominal = run.filamentDiameter ?? Number.NaN;
  const problems = [...factProblems(diameterSurveyFacts, run), ...checkSurvey(observations, nominal)];
  if (problems.length > 0) return failure(problems);
  const places = surveyPlaces(observations, nominal);
  const gauge = {
    resolution: run.lengthResolution ?? usualLengthResolution,
    accuracy: run.lengthAccuracy ?? usualLengthAccuracy,
  };
  const noise = readingNoise(places, gauge);
  const results = surveyResults({ places, gauge, noise }, nominal);
  const tolerance = run.diameterTolerance ?? null;
  return success({
    method: 'diameterSurvey',
    results,
    get curve() {
      return surveyCurve(observations, places, results[0]);
    },
    warnings: diameterWarnings({ places, nominal, tolerance, gauge, isNoiseKnown: noise.isKnown, results }),
  });
}

interface Survey {
  readonly places: readonly SurveyPlace[];
  readonly gauge: Gauge;
  readonly noise: ReadingNoise;
}

function surveyResults({ places, gauge, noise }: Survey, nominal: number): ReducedResult[] {
  const random = randomSource('diameterSurvey');
  const diameters = describe(places.map(({ diameter }) => diameter));
  const areas = describe(places.map(({ areaError }) => areaError));
  const { count } = diameters;
  const freedom = count - 1;
  const differing = describe(places.map(({ difference }) => difference)).standardDeviation ** 2;
  const alike = diameters.standardDeviation < gauge.resolution / 2 ? 1 : 1 / Math.sqrt(count);
  const outcome = {
    mean: new Float64Array(draws),
    spread: new Float64Array(draws),
    area: new Float64Array(draws),
  };
  for (let index = 0; index < draws; index++) {
    const shared =
      gauge.accuracy * (2 * random.uniform() - 1) + gauge.resolution * (random.uniform() - 0.5) * alike;
    const along = random.studentT(freedom) / Math.sqrt(count);
    outcome.mean[index] = diameters.mean + along * diameters.standardDeviation + shared;
    outcome.area[index] =
      areas.mean +
      (random.studentT(freedom) / Math.sqrt(count)) * areas.standardDeviation +
      (2 * shared) / nominal;
    const variance = (freedom * diameters.standardDeviation ** 2) / (2 * random.gamma(freedom / 2));
    const { least, most } = noise.draw(random, differing);
    const ofReading = least + (most - least) * random.uniform();
    // A mean of two readings has a quarter of the variance of their difference.
    outcome.spread[index] = Math.sqrt(Math.max(0, variance - ofReading / 4));
  }
  return [
    result('meanDiameter', 'length', outcome.mean),
    result('diameterSpread', 'length', outcome.spread),
    ovalityResult(places, gauge, noise),
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
