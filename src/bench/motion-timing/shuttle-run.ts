import type { Observations } from '../sheet/observations.ts';
import type { MotionTimingRun } from './motion-timing-facts.ts';

/** Clock taken where a run names none, in s: a stop watch in the hand (common practice, no source). */
const usualClock = { resolution: 0.01, accuracy: 0.1 };
/** mm; a mark is found again to about that (common practice, no source). */
const smallestShift = 0.1;
/** Steps of the gauge that are no lost position yet. */
const unsureSteps = 3;

/** One timed row of moves to and fro over a length; mm and s. */
export interface Shuttle {
  readonly length: number;
  readonly moves: number;
  readonly duration: number;
  /** As commanded. */
  readonly speed: number;
  readonly acceleration: number;
  /** By how far the position was off afterwards; null where it was not read. */
  readonly shift: number | null;
}

/** What was timed, and by which clock. */
export interface ShuttleRun {
  readonly shuttles: readonly Shuttle[];
  /** Commanded values of the shuttles, ascending. */
  readonly speeds: readonly number[];
  readonly accelerations: readonly number[];
  readonly clock: { readonly resolution: number; readonly accuracy: number };
}

/** The rows of a sheet as shuttles. */
export function shuttlesOf({ columns, rows }: Observations, run: MotionTimingRun): Shuttle[] {
  const { moveLength, moves, duration, commandedSpeed, acceleration, positionShift } = columns;
  return rows.map((_, index) => ({
    length: moveLength?.[index] ?? Number.NaN,
    moves: moves?.[index] ?? Number.NaN,
    duration: duration?.[index] ?? Number.NaN,
    speed: commandedSpeed?.[index] ?? Number.NaN,
    acceleration: acceleration?.[index] ?? run.commandedAcceleration ?? Number.NaN,
    shift: positionShift?.[index] ?? null,
  }));
}

/** Shuttles with the commanded values that they share; their order makes no difference to what comes of them. */
export function shuttleRun(shuttles: readonly Shuttle[], run: MotionTimingRun): ShuttleRun {
  const ascending = (values: readonly number[]) => [...new Set(values)].sort((one, other) => one - other);
  return {
    shuttles: shuttles.toSorted(
      (one, other) =>
        one.speed - other.speed ||
        one.acceleration - other.acceleration ||
        one.length - other.length ||
        one.moves - other.moves ||
        one.duration - other.duration,
    ),
    speeds: ascending(shuttles.map(({ speed }) => speed)),
    accelerations: ascending(shuttles.map(({ acceleration }) => acceleration)),
    clock: {
      resolution: run.clockResolution ?? usualClock.resolution,
      accuracy: run.clockAccuracy ?? usualClock.accuracy,
    },
  };
}

/** Shuttles after which the position was off by more than a gauge and a mark can be. */
export function lostShuttles(shuttles: readonly Shuttle[], { lengthResolution }: MotionTimingRun): Shuttle[] {
  const least = Math.max(smallestShift, unsureSteps * (lengthResolution ?? 0));
  return shuttles.filter(({ shift }) => shift !== null && Math.abs(shift) > least);
}

/** Shuttles less demanding than every one that lost its position: settings that are at least as hard are not held. */
export function heldShuttles(shuttles: readonly Shuttle[], lost: readonly Shuttle[]): Shuttle[] {
  return shuttles.filter(
    ({ speed, acceleration }) =>
      !lost.some((other) => speed >= other.speed && acceleration >= other.acceleration),
  );
}
