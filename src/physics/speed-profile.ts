import type {
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
  Seconds,
} from '../units/canonical.ts';

/** A straight move: how long, how fast it may go, and the speeds at which it begins and ends. */
export interface StraightMove {
  readonly length: Millimetres;
  /** Commanded speed. */
  readonly speed: MillimetresPerSecond;
  readonly acceleration: MillimetresPerSecondSquared;
  readonly entrySpeed: MillimetresPerSecond;
  readonly exitSpeed: MillimetresPerSecond;
}

/** Speed over time of a straight move: a ramp up, perhaps a cruise, a ramp down. */
export interface SpeedProfile {
  /** The highest speed that the move really reaches; at most the commanded one. */
  readonly peak: MillimetresPerSecond;
  /** Time at the commanded speed. */
  readonly cruise: Seconds;
  /** Time below it, speeding up and slowing down. */
  readonly ramps: Seconds;
}

/**
 * The fastest speed profile of a straight move at a constant acceleration: a trapezoid, or a triangle where the move
 * is too short to touch the commanded speed. Its peak is the lesser of that and sqrt(aL + (v_in^2 + v_out^2)/2).
 * An end speed above the commanded one counts as the commanded one; an end speed that the length does not allow from
 * the other end counts as the one that it allows.
 * Source: OpenStax, University Physics vol. 1, section 3.4: v^2 = v0^2 + 2as over each ramp.
 */
export function speedProfile(move: StraightMove): SpeedProfile {
  const { length, speed, acceleration } = move;
  const reachable = (from: MillimetresPerSecond) => Math.sqrt(from ** 2 + 2 * acceleration * length);
  const [first, last] = [Math.min(move.entrySpeed, speed), Math.min(move.exitSpeed, speed)];
  const entry = Math.min(first, reachable(last));
  const exit = Math.min(last, reachable(first));
  const touched = Math.sqrt(acceleration * length + (entry ** 2 + exit ** 2) / 2);
  const peak = Math.min(touched, speed);
  const ramps = Math.max(0, 2 * peak - entry - exit) / acceleration;
  if (touched <= speed) return { peak, cruise: 0, ramps };
  const rampLength = (2 * speed ** 2 - entry ** 2 - exit ** 2) / (2 * acceleration);
  return { peak, cruise: (length - rampLength) / speed, ramps };
}
