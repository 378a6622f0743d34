import type {
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
  Seconds,
} from '../units/canonical.ts';
import { moveDuration } from './motion.ts';

/** A move from stop to stop whose acceleration itself takes time to build up. */
interface RoundedMove {
  readonly length: Millimetres;
  readonly speed: MillimetresPerSecond;
  readonly acceleration: MillimetresPerSecondSquared;
  /** Time in which the acceleration rises from 0 to its full value: acceleration over jerk. */
  readonly rounding: Seconds;
}

/**
 * Time, in s, of a straight move from stop to stop under controls that limit the jerk to j: the acceleration rises and
 * falls within τ = a/j. A ramp to the speed v takes v/a + τ, or 2·√(v·τ/a) where v < a·τ, so that the full acceleration
 * is never reached; at the middle of a ramp half of the speed is reached, so that its length is half of v times its time.
 * Without rounding it is `moveDuration`.
 * Source: Biagiotti, Melchiorri, Trajectory Planning for Automatic Machines and Robots, 2008, section 3.4, double S
 * velocity profile (from memory).
 */
export function roundedMoveDuration({ length, speed, acceleration, rounding }: RoundedMove): Seconds {
  if (rounding === 0) return moveDuration(length, speed, acceleration);
  const toSpeed = rampTime(speed, acceleration, rounding);
  if (length >= speed * toSpeed) return length / speed + toSpeed;
  const full = rounding + Math.sqrt(rounding ** 2 + (4 * length) / acceleration);
  // Twice the ramp to the peak; below a peak of a·τ, where each ramp takes 2·τ, the full acceleration is not reached.
  if (full >= 4 * rounding) return full;
  const peak = Math.cbrt((length ** 2 * acceleration) / (4 * rounding));
  return 2 * rampTime(peak, acceleration, rounding);
}

function rampTime(speed: number, acceleration: number, rounding: number): number {
  return speed >= acceleration * rounding
    ? speed / acceleration + rounding
    : 2 * Math.sqrt((speed * rounding) / acceleration);
}
