import type { Millimetres, MillimetresPerSecond, Seconds } from '../units/canonical.ts';

/**
 * Highest mean speed, in mm/s, at which a layer's path takes at least the shortest layer time that keeps the shape: v = l/t.
 * Source: definition of mean speed.
 */
export function speedAtLayerTime(pathLength: Millimetres, layerTime: Seconds): MillimetresPerSecond {
  return pathLength / layerTime;
}
