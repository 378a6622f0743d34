import {
  backgroundCorrection,
  levelAtOtherDistance,
  meanOfLevels,
  powerLevelFromPressure,
  powerOfLevel,
} from '../../physics/sound.ts';
import { failure, type Result, success } from '../../result.ts';
import { describe } from '../../statistics/describe.ts';
import { rounded } from '../../units/rounded.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import { notPositiveReadings, outsideReadings, repeatedTable } from '../sheet/reading-checks.ts';
import { backgroundRange, type CorrectedReading } from './corrected-reading.ts';
import type { SoundLevelRun } from './sound-level-facts.ts';
import { soundWarnings } from './sound-warnings.ts';

/** mm */
const oneMetre = 1000;
/** Standard deviation of reproducibility of the survey grade, in dB (ISO 3746:2010, table of typical values, from memory). */
const surveyGrade = 3;
/** What a meter without a class adds, in dB (common practice, no source: its class 2 limits are met to about that). */
const unclassedMeter = 1.5;
/** Covers 95 % of a normal distribution on both sides (GUM, JCGM 100:2008, table G.1). */
const coverageFactor = 1.96;
const leastReadings = 3;

/**
 * Sound of a machine on a floor, from A-weighted readings around it: each is corrected for the background, brought to
 * 1 m over a reflecting plane (−20 lg r), and averaged by energy; the sound power follows from the hemisphere
 * (ISO 3746:2010; ISO 3744:2010). The interval is that of the survey grade: reproducibility, the scatter between the
 * places, and a meter without a class. What the walls of the room send back is not taken off, which is the safe side.
 */
export function reduceSoundLevel(
  observations: Observations,
  run: SoundLevelRun,
): Result<Reduction, readonly BenchProblem[]> {
  const problems = checkSound(observations, run);
  if (problems.length > 0) return failure(problems);
  const all = correctedReadings(observations, run);
  const usable = all.filter(({ difference }) => difference >= backgroundRange.cannot);
  if (usable.length < leastReadings) return failure([backgroundTooLoud(usable.length, all.length)]);
  const level = meanOfLevels(usable.map(({ atOneMetre }) => atOneMetre));
  const scatter = describe(usable.map(({ atOneMetre }) => atOneMetre)).standardDeviation;
  const uncertainty = Math.hypot(
    surveyGrade,
    scatter / Math.sqrt(usable.length),
    (run.levelResolution ?? 1) / Math.sqrt(12),
    run.meterClass === 'class1' || run.meterClass === 'class2' ? 0 : unclassedMeter,
  );
  const half = coverageFactor * uncertainty;
  return success({
    method: 'soundLevel',
    results: [levelResult(level, half), powerResult(level, half)],
    curve: soundCurve(all, level, half),
    warnings: soundWarnings(all, { scatter, meterClass: run.meterClass }),
  });
}

function correctedReadings({ columns }: Observations, run: SoundLevelRun): CorrectedReading[] {
  const { distance: distances = [], soundLevel: levels = [], background } = columns;
  return distances.map((distance, index) => {
    const level = levels[index] ?? Number.NaN;
    const difference = level - (background?.[index] ?? run.backgroundLevel ?? Number.NaN);
    const correction = difference > backgroundRange.need ? 0 : backgroundCorrection(difference);
    return {
      distance,
      level,
      difference,
      atOneMetre: levelAtOtherDistance(level - correction, distance, oneMetre),
    };
  });
}

function levelResult(level: number, half: number): ReducedResult {
  return {
    quantity: 'soundLevel',
    dimension: 'soundLevel',
    value: rounded(level),
    interval: { low: rounded(level - half), high: rounded(level + half), coverage: 0.95 },
    censored: null,
  };
}

function powerResult(level: number, half: number): ReducedResult {
  const power = (at: number) => rounded(powerOfLevel(powerLevelFromPressure(at, oneMetre, 'overPlane')));
  return {
    quantity: 'soundPower',
    dimension: 'power',
    value: power(level),
    interval: { low: power(level - half), high: power(level + half), coverage: 0.95 },
    censored: null,
  };
}

/** Level against distance, with the fall of 6 dB a doubling that the level at 1 m stands for. */
function soundCurve(all: readonly CorrectedReading[], level: number, half: number): ReductionCurve {
  const distances = [...new Set([...all.map(({ distance }) => distance), oneMetre])].sort((a, b) => a - b);
  const points = distances.map((x) => ({ x, y: rounded(levelAtOtherDistance(level, oneMetre, x)) }));
  return {
    x: { quantity: 'distance', dimension: 'length' },
    y: { quantity: 'soundLevel', dimension: 'soundLevel' },
    readings: all.map(({ distance, level: y }) => ({ x: distance, y })),
    fit: points,
    band: points.map(({ x, y }) => ({ x, low: rounded(y - half), high: rounded(y + half) })),
    threshold: null,
    limits: [],
  };
}

function checkSound(observations: Observations, run: SoundLevelRun): BenchProblem[] {
  const { background, soundLevel: levels = [] } = observations.columns;
  if (background === undefined && run.backgroundLevel === undefined) {
    return [
      {
        code: 'missingFact',
        message: 'the level of the room with the machine off is missing',
        help: 'read it at the same places, and add a column `background` or the key `backgroundLevel` (--background of a bare sheet)',
      },
    ];
  }
  const below = levels.findIndex(
    (level, index) => level <= (background?.[index] ?? run.backgroundLevel ?? Number.NEGATIVE_INFINITY),
  );
  return [
    ...notPositiveReadings(
      observations,
      ['distance'],
      'write the distance from the source to the microphone',
    ),
    ...outsideReadings(observations, 'distance', [100, 20_000], 'a survey reads at 0.1 m to 20 m'),
    ...outsideReadings(observations, 'soundLevel', [10, 130], 'a machine gives 10 to 130 dB(A)'),
    ...outsideReadings(observations, 'background', [5, 120], 'a room has 5 to 120 dB(A)'),
    ...repeatedTable(observations, 'distance', 2),
    ...(below === -1 ? [] : [louderBackground(observations.rows[below] ?? below + 1)]),
    ...(levels.length < leastReadings ? [tooFewReadings(levels.length)] : []),
  ];
}

function louderBackground(row: number): BenchProblem {
  return {
    code: 'louderBackground',
    message: 'the room alone is as loud as the room with the machine',
    help: 'check whether the columns `soundLevel` and `background` are swapped; else measure at a quieter time',
    row,
  };
}

function tooFewReadings(count: number): BenchProblem {
  return {
    code: 'tooFewSteps',
    message: `there are ${count} readings, but a level needs ${leastReadings}`,
    found: String(count),
    help: 'read at four places around the machine and one above it',
  };
}

function backgroundTooLoud(usable: number, all: number): BenchProblem {
  return {
    code: 'backgroundTooLoud',
    message: `${usable} of ${all} readings are ${backgroundRange.cannot} dB or more above the background, but ${leastReadings} are needed`,
    found: String(usable),
    help: 'below that the background cannot be subtracted: move closer, or measure in a quieter room',
  };
}
