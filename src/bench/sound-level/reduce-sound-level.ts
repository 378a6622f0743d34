import {
  backgroundCorrection,
  levelAtOtherDistance,
  powerLevelFromPressure,
  powerOfLevel,
} from '../../physics/sound.ts';
import { failure, type Result, success } from '../../result.ts';
import { rounded } from '../../units/rounded.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { factProblems } from '../facts/fact-problems.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import { notPositiveReadings, outsideReadings, repeatedTable } from '../sheet/reading-checks.ts';
import { backgroundRange, type CorrectedReading, oneMetre } from './corrected-reading.ts';
import { type LevelInterval, levelInterval, roomLevels } from './room-levels.ts';
import { type SoundLevelRun, soundLevelFacts } from './sound-level-facts.ts';
import { soundWarnings } from './sound-warnings.ts';

/** Standard deviation of reproducibility of the survey grade, in dB (ISO 3746:2010, table of typical values, from memory). */
const surveyGrade = 3;
/** What a meter without a class adds, in dB (common practice, no source: its class 2 limits are met to about that). */
const unclassedMeter = 1.5;
const leastReadings = 3;

/**
 * Sound of a machine on a floor, from A-weighted readings around it: each is corrected for the background, brought to
 * 1 m over a reflecting plane (−20 lg r), freed of what the walls send back (K₂), and averaged by energy; the sound power
 * follows from the hemisphere (ISO 3746:2010; ISO 3744:2010). The interval is that of the survey grade: reproducibility,
 * the scatter between the places, and a meter without a class. A room only adds: where its correction is not stated, any that a
 * survey allows is possible, so that the interval reaches further down than up from what was read.
 */
export function reduceSoundLevel(
  observations: Observations,
  run: SoundLevelRun,
): Result<Reduction, readonly BenchProblem[]> {
  const problems = [...factProblems(soundLevelFacts, run), ...checkSound(observations, run)];
  if (problems.length > 0) return failure(problems);
  const all = correctedReadings(observations, run);
  const usable = all.filter(({ difference }) => difference >= backgroundRange.cannot);
  if (usable.length < leastReadings) return failure([backgroundTooLoud(usable.length, all.length)]);
  const levels = roomLevels(usable, run.roomCorrection);
  const found = levelInterval(levels, (scatter) =>
    Math.hypot(
      surveyGrade,
      scatter / Math.sqrt(usable.length),
      (run.levelResolution ?? 1) / Math.sqrt(12),
      run.meterClass === 'class1' || run.meterClass === 'class2' ? 0 : unclassedMeter,
    ),
  );
  return success({
    method: 'soundLevel',
    results: [levelResult(found), powerResult(found)],
    curve: soundCurve(all, found),
    warnings: soundWarnings(all, { ...run, scatter: Math.min(...levels.map(({ scatter }) => scatter)) }),
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

function levelResult({ low, level, high }: LevelInterval): ReducedResult {
  return {
    quantity: 'soundLevel',
    dimension: 'soundLevel',
    value: rounded(level),
    interval: { low: rounded(low), high: rounded(high), coverage: 0.95 },
    censored: null,
  };
}

function powerResult({ low, level, high }: LevelInterval): ReducedResult {
  const power = (at: number) => rounded(powerOfLevel(powerLevelFromPressure(at, oneMetre, 'overPlane')));
  return {
    quantity: 'soundPower',
    dimension: 'power',
    value: power(level),
    interval: { low: power(low), high: power(high), coverage: 0.95 },
    censored: null,
  };
}

/** Level against distance, with the fall of 6 dB a doubling that the level at 1 m stands for. */
function soundCurve(all: readonly CorrectedReading[], { low, level, high }: LevelInterval): ReductionCurve {
  const distances = [...new Set([...all.map(({ distance }) => distance), oneMetre])].sort((a, b) => a - b);
  const at = (of: number, x: number) => rounded(levelAtOtherDistance(of, oneMetre, x));
  const points = distances.map((x) => ({ x, y: at(level, x) }));
  return {
    x: { quantity: 'distance', dimension: 'length' },
    y: { quantity: 'soundLevel', dimension: 'soundLevel' },
    readings: all.map(({ distance, level: y }) => ({ x: distance, y })),
    fit: points,
    band: distances.map((x) => ({ x, low: at(low, x), high: at(high, x) })),
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
    ...(run.roomCorrection === undefined || run.roomCorrection >= 0
      ? []
      : [negativeRoom(run.roomCorrection)]),
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

function negativeRoom(correction: number): BenchProblem {
  return {
    code: 'badSetting',
    message: `the room correction cannot be ${correction} dB: a room only adds to the sound`,
    help: 'write by how much the walls raise the level at 1 m, such as 3 dB, or leave it out',
  };
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
