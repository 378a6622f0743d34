import type {
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
  Seconds,
} from '../units/canonical.ts';
import { speedProfile } from './speed-profile.ts';

/**
 * Distance, in mm, in which a constant acceleration (mm/s²) brings an axis from rest to a speed: s = v^2/2a.
 * Source: OpenStax, University Physics vol. 1, section 3.4, motion with constant acceleration.
 */
export function runUpLength(
  speed: MillimetresPerSecond,
  acceleration: MillimetresPerSecondSquared,
): Millimetres {
  return speed ** 2 / (2 * acceleration);
}

/** Shortest stop-to-stop move, in mm, that touches a speed: a run-up and an equal braking length, v^2/a. Source: as `runUpLength`. */
export function lengthToTouchSpeed(
  speed: MillimetresPerSecond,
  acceleration: MillimetresPerSecondSquared,
): Millimetres {
  return 2 * runUpLength(speed, acceleration);
}

/**
 * Highest speed, in mm/s, that a move of a length can touch when it begins and ends at the same speed:
 * sqrt(v0^2 + aL), so sqrt(aL) from stop to stop. The commanded speed may be lower.
 * Source: OpenStax, University Physics vol. 1, section 3.4: v^2 = v0^2 + 2as over each half.
 */
export function peakSpeedOfMove(
  length: Millimetres,
  acceleration: MillimetresPerSecondSquared,
  endSpeed: MillimetresPerSecond = 0,
): MillimetresPerSecond {
  return Math.sqrt(endSpeed ** 2 + acceleration * length);
}

/**
 * Time, in s, of a straight move that begins and ends at `endSpeed` (at most the commanded speed) and may cruise between:
 * a trapezoid of speed over time, or a triangle where the move is too short to touch the commanded speed.
 * Without `endSpeed` it is L/v + v/a, or 2 sqrt(L/a) if v^2/a > L. Jerk and firmware look-ahead are left out.
 * Source: derived from OpenStax, University Physics vol. 1, section 3.4.
 */
export function moveDuration(
  length: Millimetres,
  speed: MillimetresPerSecond,
  acceleration: MillimetresPerSecondSquared,
  endSpeed: MillimetresPerSecond = 0,
): Seconds {
  const { cruise, ramps } = speedProfile({
    length,
    speed,
    acceleration,
    entrySpeed: endSpeed,
    exitSpeed: endSpeed,
  });
  return cruise + ramps;
}

/**
 * Highest mean speed, in mm/s, at which a layer's path takes at least the shortest layer time that keeps the shape: v = l/t.
 * Source: definition of mean speed.
 */
export function speedAtLayerTime(pathLength: Millimetres, layerTime: Seconds): MillimetresPerSecond {
  return pathLength / layerTime;
}
