/** Scale step taken where a run names no scale, in g: the usual pocket scale (common practice, no source). */
export const usualMassResolution = 0.01;

/** Gauge step taken where a run names no gauge, in mm: the usual caliper (common practice, no source). */
export const usualLengthResolution = 0.01;

/**
 * Largest error of a gauge that states none, in mm: calipers with a step of 0.01 mm up to 50 mm (ISO 13385-1:2019,
 * typical value, from memory).
 */
export const usualLengthAccuracy = 0.02;

/** Largest part of a mass, as a fraction, that the step of the scale may cost (common practice, no source). */
export const largestScaleShare = 0.005;
