import { failure, type Result, success } from '../../result.ts';
import { randomSource } from '../../statistics/random.ts';
import { capitalised, wordsOf } from '../../text/words.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { factProblems } from '../facts/fact-problems.ts';
import { usualLengthResolution } from '../facts/instrument-facts.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import {
  badGrades,
  negativeReadings,
  outsideReadings,
  repeatedTable,
  tooFewValues,
  tooManyValues,
} from '../sheet/reading-checks.ts';
import { crossingResult, plottedLimits } from '../steps/crossing-result.ts';
import { gapCrossing } from '../steps/gap-crossing.ts';
import { acceptedQuality, gradeNoise, isGraded } from '../steps/graded.ts';
import { seriesWarnings } from '../steps/series-warnings.ts';
import { type CourseDraws, courseBand, courseDraws } from '../steps/step-draws.ts';
import { type SeriesNoise, seriesSteps } from '../steps/step-series.ts';
import { unsteadyStep } from '../steps/unsteady-course.ts';
import {
  type LadderSetting,
  type LadderSettingName,
  ladderSettingNames,
  ladderSettings,
} from './ladder-settings.ts';
import { type SettingLadderRun, settingLadderFacts } from './setting-ladder-facts.ts';

/** Relative scatter of the size of a defect from one specimen to the next (common practice, no source). */
const usualScatter = 0.15;
/** mm; what is larger is no defect of a specimen any more. */
const largestDefect = 100;

const courses = {
  fromLeast: 'rising',
  upToHighest: 'falling',
  middleOfWindow: 'peaked',
  window: 'peaked',
} as const satisfies Readonly<Record<LadderSetting['holds'], unknown>>;

/**
 * The setting that holds, from the size of a defect or from grades against a setting that is raised in steps: where a
 * quality that goes steadily with the setting, or up to a best one and down again, passes the accepted one. The interval
 * covers the gauge or the coarseness of grades, how far specimens differ, and the gap between settings, by the Monte
 * Carlo method (JCGM 101:2008).
 */
export function reduceSettingLadder(
  observations: Observations,
  run: SettingLadderRun,
): Result<Reduction, readonly BenchProblem[]> {
  const name = ladderSettingNames.find((each) => observations.columns[each] !== undefined);
  if (name === undefined) return failure([noSetting]);
  const problems = [
    ...factProblems(settingLadderFacts, run),
    ...checkLadder(observations, name),
    ...checkDefect(observations, run),
  ];
  if (problems.length > 0) return failure(problems);
  return success(reducedLadder(observations, name, run));
}

const noSetting: BenchProblem = {
  code: 'missingColumn',
  message: 'there is no column with the setting that was raised',
  help: `add one of ${ladderSettingNames.join(', ')}`,
};

function reducedLadder(
  observations: Observations,
  name: LadderSettingName,
  run: SettingLadderRun,
): Reduction {
  const { dimension, holds }: LadderSetting = ladderSettings[name];
  const graded = isGraded(observations);
  const settings = observations.columns[name] ?? [];
  const readings = observations.columns[graded ? 'grade' : 'defectSize'] ?? [];
  const scale = graded ? gradeScale(run) : defectScale(run);
  const steps = seriesSteps(settings, readings.map(scale.quality));
  const drawn = courseDraws(steps, scale.noise, courses[holds], 'settingLadder');
  const x = steps.map((step) => step.x);
  const results = resultsOf(name, x, drawn, scale.level);
  const unsteady = unsteadyStep(steps, scale.noise, courses[holds]);
  return {
    method: 'settingLadder',
    results,
    get curve(): ReductionCurve {
      return {
        x: { quantity: name, dimension },
        y: graded
          ? { quantity: 'grade', dimension: 'count' }
          : { quantity: 'defectSize', dimension: 'length' },
        readings: settings.map((at, index) => ({ x: at, y: readings[index] ?? 0 })),
        ...courseBand(steps, drawn, scale.shown),
        threshold: scale.shown(scale.level),
        limits: plottedLimits(results),
      };
    },
    warnings: [
      ...(unsteady === null ? [] : [unsteadyWarning(name, unsteady.x)]),
      ...seriesWarnings(steps, results.filter(canGoOn(name)), dimension),
    ],
  };
}

/** Whether a ladder that does not reach an end could: there is no fan above 100 %, and nothing below 0. */
function canGoOn(name: LadderSettingName): (result: ReducedResult) => boolean {
  const [lowest, highest]: LadderSetting['range'] = ladderSettings[name].range;
  return ({ censored, value }) => censored === null || (value !== lowest && value !== highest);
}

/** How readings become a quality that is better the higher it is. */
interface QualityScale {
  readonly quality: (reading: number) => number;
  readonly shown: (quality: number) => number;
  readonly level: number;
  readonly noise: SeriesNoise;
}

function gradeScale(run: SettingLadderRun): QualityScale {
  return {
    quality: (grade) => grade,
    shown: (quality) => quality,
    level: acceptedQuality(run.acceptedGrade),
    noise: gradeNoise,
  };
}

/** A defect counts by its logarithm; one below half a step of the gauge reads as 0. */
function defectScale(run: SettingLadderRun): QualityScale {
  const resolution = run.lengthResolution ?? usualLengthResolution;
  return {
    quality: (size) => -Math.log(Math.max(size, resolution / 2)),
    shown: (quality) => Math.exp(-quality),
    level: -Math.log(run.acceptedDefect ?? Number.NaN),
    noise: { usualScatter, resolution: ({ mean }) => Math.min(1, resolution / Math.exp(-mean)) },
  };
}

function resultsOf(
  name: LadderSettingName,
  x: readonly number[],
  drawn: CourseDraws,
  level: number,
): ReducedResult[] {
  const { dimension, holds }: LadderSetting = ladderSettings[name];
  const { low, high } = heldDraws(x, drawn, { level, hasTwoSides: courses[holds] === 'peaked' });
  switch (holds) {
    case 'fromLeast':
      return [crossingResult(name, dimension, low, x)];
    case 'upToHighest':
      return [crossingResult(name, dimension, high, x)];
    case 'middleOfWindow':
      return [crossingResult(name, dimension, middles(low, high), x)];
    case 'window':
      return [
        crossingResult(`lowest${capitalised(name)}`, dimension, low, x),
        crossingResult(`highest${capitalised(name)}`, dimension, high, x),
      ];
    default:
      return holds satisfies never;
  }
}

interface HeldLevel {
  readonly level: number;
  readonly hasTwoSides: boolean;
}

/** Both ends of what holds, for every draw; a course that nowhere reaches the level leaves both at its best setting. */
function heldDraws(
  x: readonly number[],
  { count, size, values, peaks }: CourseDraws,
  { level, hasTwoSides }: HeldLevel,
) {
  const random = randomSource('settingLadder gaps');
  const [low, high] = [new Float64Array(count), new Float64Array(count)];
  const turned = x.map((at) => -at).reverse();
  for (let draw = 0; draw < count; draw++) {
    const course = values.subarray(draw * size, (draw + 1) * size);
    const peak = peaks[draw] ?? 0;
    const [bend, place] = [random.uniform(), random.uniform()];
    // A course that rises and falls has fewer steps on each side to show a jump by.
    const gap = { bend, place, straight: hasTwoSides ? bend ** 2 : bend };
    const top = x[peak] ?? Number.NaN;
    const rising = course.subarray(0, peak + 1);
    const falling = course.slice(peak).reverse();
    const [from, to] = [
      gapCrossing(x, rising, level, gap),
      -gapCrossing(turned, falling, level, { ...gap, place: 1 - gap.place }),
    ];
    low[draw] = peak === size - 1 ? from : Math.min(top, from);
    high[draw] = peak === 0 ? to : Math.max(top, to);
  }
  return { low, high };
}

/** A window that is open at an end has no middle: it lies towards that end. */
function middles(low: Float64Array, high: Float64Array): Float64Array {
  return low.map((from, draw) => {
    const to = high[draw] ?? Number.NaN;
    if (!Number.isFinite(from)) return Number.NEGATIVE_INFINITY;
    return Number.isFinite(to) ? (from + to) / 2 : Number.POSITIVE_INFINITY;
  });
}

function unsteadyWarning(name: LadderSettingName, at: number): string {
  const { dimension }: LadderSetting = ladderSettings[name];
  const text = formatQuantity(at, dimension, { significantDigits: 4 });
  return `The readings do not go steadily with the ${wordsOf(name)}: those at ${text} are worse than the others allow. Repeat them; something else changed in between, or the setting does not act alone.`;
}

function checkLadder(observations: Observations, name: LadderSettingName): BenchProblem[] {
  const { range }: LadderSetting = ladderSettings[name];
  return [
    ...negativeReadings(observations, name),
    ...(observations.columns.defectSize === undefined ? [] : negativeReadings(observations, 'defectSize')),
    ...outsideReadings(observations, name, range, `the setting lies between ${range[0]} and ${range[1]}`),
    ...outsideReadings(
      observations,
      'defectSize',
      [0, largestDefect],
      `no defect of a specimen is larger than ${largestDefect} mm`,
    ),
    ...badGrades(observations),
    ...repeatedTable(observations, name, 3),
    ...tooManyValues(observations, name),
    ...tooFewValues(observations, name, 4, 'add settings until one fails clearly and one holds clearly'),
  ];
}

function checkDefect({ columns }: Observations, { acceptedDefect }: SettingLadderRun): BenchProblem[] {
  if (columns.defectSize === undefined || (acceptedDefect !== undefined && acceptedDefect > 0)) return [];
  return [
    {
      code: 'missingFact',
      message: 'a ladder with measured defects needs an accepted size above 0',
      help: 'say which size is accepted, such as 0.3 mm',
    },
  ];
}
