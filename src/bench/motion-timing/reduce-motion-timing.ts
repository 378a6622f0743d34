import { roundedMoveDuration } from '../../physics/rounded-ramps.ts';
import { failure, type Result, success } from '../../result.ts';
import { drawnQuantiles } from '../../statistics/coverage-interval.ts';
import type { Dimension } from '../../units/dimension.ts';
import { rounded } from '../../units/rounded.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { factProblems } from '../facts/fact-problems.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../reduction.ts';
import type { Observations } from '../sheet/observations.ts';
import { checkEnough, checkShuttles } from './motion-checks.ts';
import { type MotionTimingRun, motionTimingFacts } from './motion-timing-facts.ts';
import { motionWarnings } from './motion-warnings.ts';
import { type DrawnMotions, type PossibleMotions, possibleMotions } from './possible-motions.ts';
import { highestAcceleration } from './shuttle-fit.ts';
import { heldShuttles, lostShuttles, type ShuttleRun, shuttleRun, shuttlesOf } from './shuttle-run.ts';

/** Curves that the band of a plot is made of, and places on it. */
const curvesForBand = 400;
const gridIntervals = 48;

/**
 * The speed and the acceleration that a machine reaches at the highest commanded ones, and the pause at each turn, from
 * the times of moves to and fro over known lengths. A move takes p + L/v + v/a where L ≥ v²/a, else p + 2·√(L/a) (OpenStax,
 * University Physics vol. 1, section 3.4); where controls round their ramps (limited jerk) it takes longer, see
 * `roundedMoveDuration`. The error of the clock counts once a row, whatever the number of moves; all are fitted by
 * nonlinear least squares, and the intervals are by the Monte Carlo method (JCGM 101:2008). Settings at which the
 * position was lost are left out, with all that are at least as hard.
 */
export function reduceMotionTiming(
  observations: Observations,
  run: MotionTimingRun,
): Result<Reduction, readonly BenchProblem[]> {
  const problems = [...factProblems(motionTimingFacts, run), ...checkShuttles(observations, run)];
  if (problems.length > 0) return failure(problems);
  const all = shuttlesOf(observations, run);
  const lost = lostShuttles(all, run);
  const timed = shuttleRun(heldShuttles(all, lost), run);
  const few = checkEnough(timed);
  if (few.length > 0) return failure(few);
  const possible = possibleMotions(timed);
  if (possible === null) return failure([indistinct]);
  const results = motionResults(possible.motions);
  return success({
    method: 'motionTiming',
    results,
    get curve() {
      return motionCurve(timed, possible);
    },
    warnings: motionWarnings({ timed, lost, possible, results, isPositionRead: all.some(hasShift) }),
  });
}

const hasShift = ({ shift }: { readonly shift: number | null }) => shift !== null;

const indistinct: BenchProblem = {
  code: 'indistinct',
  message: 'the times do not tell speed, acceleration and pause apart',
  help: 'at each speed time moves that are too short to reach it and moves several times as long; two speeds, one of them half of the other, help most',
};

function motionResults({ speed, acceleration, pause, rounding }: DrawnMotions): ReducedResult[] {
  const reached = acceleration.map((full, index) =>
    highestAcceleration(full, speed[index] ?? Number.NaN, rounding[index] ?? Number.NaN),
  );
  return [
    result('reachedSpeed', 'speed', speed),
    result('reachedAcceleration', 'acceleration', reached),
    result('turnPause', 'time', pause),
  ];
}

function result(quantity: string, dimension: Dimension, draws: Float64Array): ReducedResult {
  const [low = Number.NaN, middle = Number.NaN, high = Number.NaN] = drawnQuantiles(
    draws,
    [0.025, 0.5, 0.975],
  );
  return {
    quantity,
    dimension,
    value: rounded(middle),
    interval: { low: rounded(low), high: rounded(high), coverage: 0.95 },
    censored: null,
  };
}

/** Time of a move over a length in mm by one of the motions, s. */
function motionTime(
  length: number,
  { speed, acceleration, pause, rounding }: DrawnMotions,
  index: number,
): number {
  const move = {
    length,
    speed: speed[index] ?? Number.NaN,
    acceleration: acceleration[index] ?? Number.NaN,
    rounding: rounding[index] ?? Number.NaN,
  };
  return (pause[index] ?? Number.NaN) + roundedMoveDuration(move);
}

/** Time of one move against its length, at the highest commanded speed and acceleration. */
function motionCurve(run: ShuttleRun, { motions }: PossibleMotions): ReductionCurve {
  const { shuttles } = run;
  const longest = Math.max(...shuttles.map(({ length }) => length));
  const apart = Math.ceil(motions.count / curvesForBand);
  const some = Array.from({ length: Math.ceil(motions.count / apart) }, (_, index) => index * apart);
  const points = Array.from({ length: gridIntervals }, (_, index) => {
    const x = rounded(longest * ((index + 1) / gridIntervals) ** 2);
    const all = some.map((index) => motionTime(x, motions, index));
    const [low = 0, y = 0, high = 0] = drawnQuantiles(all, [0.025, 0.5, 0.975]).map((value) =>
      rounded(value),
    );
    return { x, y, low, high };
  });
  return {
    x: { quantity: 'moveLength', dimension: 'length' },
    y: { quantity: 'moveTime', dimension: 'time' },
    readings: shuttles.map(({ length, moves, duration }) => ({ x: length, y: rounded(duration / moves) })),
    fit: points.map(({ x, y }) => ({ x, y })),
    band: points.map(({ x, low, high }) => ({ x, low, high })),
    threshold: null,
    limits: [],
  };
}
