import { formatNumber } from '../../units/format-quantity.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { Observations } from '../sheet/observations.ts';
import {
  notPositiveReadings,
  outsideReadings,
  repeatedTable,
  tooFewValues,
} from '../sheet/reading-checks.ts';
import type { MotionTimingRun } from './motion-timing-facts.ts';
import { type ShuttleRun, shuttlesOf } from './shuttle-run.ts';

/** More rows than a bench times by hand; each costs time. */
const mostRows = 120;
/** Commanded speeds, or accelerations, of one run; each is a parameter of the fit. */
const mostSettings = 3;
const fewestLengths = 4;
/** Degrees of freedom that a scatter takes at least. */
const fewestSpare = 3;
/** No control moves so much faster than it is told. */
const largestHaste = 1.2;

/** What is wrong with the readings one by one. */
export function checkShuttles(observations: Observations, run: MotionTimingRun): BenchProblem[] {
  const { acceleration, moves = [] } = observations.columns;
  if (acceleration === undefined && run.commandedAcceleration === undefined) {
    return [
      {
        code: 'missingFact',
        message: 'the commanded acceleration is missing',
        help: 'add a column `acceleration` or the condition `acceleration` (--acceleration of a bare sheet)',
      },
    ];
  }
  const positive = ['moveLength', 'commandedSpeed', 'moves', 'duration'];
  const basic = [
    ...notPositiveReadings(
      observations,
      acceleration === undefined ? positive : [...positive, 'acceleration'],
      'write the commanded value, the number of moves and the time that was read',
    ),
    ...outsideReadings(observations, 'moveLength', [0.01, 5000], 'a move is 0.01 mm to 5 m long'),
    ...outsideReadings(observations, 'commandedSpeed', [0.1, 5000], 'a machine moves at up to 5 m/s'),
    ...outsideReadings(observations, 'acceleration', [1, 200_000], 'a machine has 1 to 200 000 mm/s2'),
    ...outsideReadings(observations, 'duration', [0, 14_400], 'a row takes up to four hours'),
    ...wholeMoves(observations, moves),
    ...repeatedTable(observations, 'moveLength', 3),
    ...tooManyRows(observations),
    ...tooFewValues(
      observations,
      'moveLength',
      fewestLengths,
      'add lengths that are shorter, and lengths that are longer, than what the axis needs to reach its speed',
    ),
  ];
  return basic.length > 0 ? basic : tooHasty(observations, run);
}

function wholeMoves({ rows }: Observations, moves: readonly number[]): BenchProblem[] {
  const index = moves.findIndex((count) => !Number.isInteger(count));
  if (index === -1) return [];
  const found = formatNumber(moves[index] ?? Number.NaN, { significantDigits: 6 });
  return [
    {
      code: 'badSetting',
      message: `${found} is no number of moves`,
      found,
      help: 'count the moves: to and fro are two',
      row: rows[index] ?? index + 1,
    },
  ];
}

function tooManyRows({ rows }: Observations): BenchProblem[] {
  if (rows.length <= mostRows) return [];
  return [
    {
      code: 'tooManyReadings',
      message: `there are ${rows.length} rows, but a run of timed moves has at most ${mostRows}`,
      found: String(rows.length),
      help: 'write one row per time that was read; a controller log is not a bench sheet',
    },
  ];
}

function tooHasty(observations: Observations, run: MotionTimingRun): BenchProblem[] {
  const shuttles = shuttlesOf(observations, run);
  const index = shuttles.findIndex(
    ({ length, moves, duration, speed }) => (length * moves) / duration > largestHaste * speed,
  );
  const shuttle = shuttles[index];
  if (shuttle === undefined) return [];
  const mean = formatNumber((shuttle.length * shuttle.moves) / shuttle.duration, { significantDigits: 3 });
  return [
    {
      code: 'implausibleReading',
      message: `the moves would have been faster than commanded, ${mean} mm/s on average instead of ${formatNumber(shuttle.speed)} mm/s`,
      found: mean,
      help: 'check the units, the decimal points and the number of moves, and whether two columns are swapped',
      row: observations.rows[index] ?? index + 1,
    },
  ];
}

/** Whether there is enough to fit: speeds, accelerations and the pause, and a scatter besides. */
export function checkEnough({ shuttles, speeds, accelerations }: ShuttleRun): BenchProblem[] {
  const settings = [
    ['commandedSpeed', speeds.length],
    ['acceleration', accelerations.length],
  ] as const;
  const many = settings.filter(([, count]) => count > mostSettings);
  const needed = speeds.length + accelerations.length + 1 + fewestSpare;
  return [
    ...many.map(([name, count]) => ({
      code: 'tooManyValues' as const,
      message: `${name} has ${count} different values, but one run has at most ${mostSettings}`,
      found: String(count),
      help: 'write the commanded value, and make a trial of its own for further ones',
    })),
    ...(shuttles.length >= needed ? [] : [tooFewRows(shuttles.length, needed)]),
  ];
}

function tooFewRows(count: number, needed: number): BenchProblem {
  return {
    code: 'tooFewSteps',
    message: `there are ${count} times of moves that kept their position, but a result needs ${needed}`,
    found: String(count),
    help: 'time more lengths at each speed, each twice',
  };
}
