import type { RandomSource } from '../../src/statistics/random.ts';

/**
 * A family of curves for the share of the feed that goes missing as the commanded flow grows past a limit. Each curve
 * is laid out by its limit, the flow in mm3/s at which the missing share equals the tolerance: that is what the
 * readings tell most about, and what is asked for.
 */
export interface OnsetFamily {
  /** How probable it is beforehand, against one of the usual families. */
  readonly weight: number;
  /** Draws the shape's coordinates from their prior. */
  readonly drawShape: (random: RandomSource) => number[];
  /** Logarithm of the prior density up to a constant; -Infinity outside of the family. */
  readonly logPrior: (shape: readonly number[]) => number;
  /** The missing share at a flow, or null where the shape cannot have such a limit. */
  readonly curve: (limit: number, tolerance: number, shape: readonly number[]) => OnsetCurve | null;
}

/** The missing share, 0 to below 1, at a commanded flow in mm3/s; never falls. */
export type OnsetCurve = (flow: number) => number;

/** A coordinate that is equally probable between two ends. */
interface Uniform {
  readonly low: number;
  readonly high: number;
}

const drawUniform = ({ low, high }: Uniform, random: RandomSource) => low + (high - low) * random.uniform();
const holds = ({ low, high }: Uniform, value: number) => value >= low && value <= high;
const logarithmic = (low: number, high: number): Uniform => ({ low: Math.log(low), high: Math.log(high) });

// How the onsets of hot ends differ is common practice, no source: from a breakdown within a few hundredths of the
// flow to a slow bend over half of it, levelling off anywhere between a fifth and nearly all of the feed missing.
const finalShare: Uniform = { low: 0.15, high: 0.97 };
/** A curve that levels off near the tolerance would have no steep crossing to speak of. */
const smallestTop = 1.2;

const stretchMedian = Math.log(0.4);
const stretchSpread = 0.9;
const onsetPower: Uniform = { low: 1, high: 3 };

/**
 * Nothing is missing up to a threshold; beyond, an exponential approach to a final share after a power onset.
 * Coordinates: logarithm of the stretch in units of the limit, power, final share.
 */
const threshold: OnsetFamily = {
  weight: 1,
  drawShape: (random) => [
    stretchMedian + stretchSpread * random.normal(),
    drawUniform(onsetPower, random),
    drawUniform(finalShare, random),
  ],
  logPrior: ([stretch = Number.NaN, power = Number.NaN, top = Number.NaN]) =>
    holds(onsetPower, power) && holds(finalShare, top)
      ? -0.5 * ((stretch - stretchMedian) / stretchSpread) ** 2
      : Number.NEGATIVE_INFINITY,
  curve: (limit, tolerance, [stretch = Number.NaN, power = Number.NaN, top = Number.NaN]) => {
    if (top < smallestTop * tolerance) return null;
    const width = limit * Math.exp(stretch);
    const start = limit - width * (-Math.log1p(-tolerance / top)) ** (1 / power);
    if (start < 0) return null;
    return (flow) => (flow <= start ? 0 : -top * Math.expm1(-(((flow - start) / width) ** power)));
  },
};

const hillPower = logarithmic(5, 120);

/**
 * An S-curve without a threshold, in the form of Hill's equation.
 * Coordinates: logarithm of the power, final share.
 */
const sCurve: OnsetFamily = {
  weight: 1,
  drawShape: (random) => [drawUniform(hillPower, random), drawUniform(finalShare, random)],
  logPrior: ([logPower = Number.NaN, top = Number.NaN]) =>
    holds(hillPower, logPower) && holds(finalShare, top) ? 0 : Number.NEGATIVE_INFINITY,
  curve: (limit, tolerance, [logPower = Number.NaN, top = Number.NaN]) => {
    if (top < smallestTop * tolerance) return null;
    const power = Math.exp(logPower);
    const odds = top / tolerance - 1;
    return (flow) => top / (1 + odds * (limit / flow) ** power);
  },
};

const ceilingPower = logarithmic(4, 100);

/**
 * The delivered flow bends over into a ceiling, as when the melt zone can do no more: delivered = commanded ×
 * (1 + (commanded/ceiling)^power)^(-1/power). Coordinate: logarithm of the power.
 */
const ceiling: OnsetFamily = {
  weight: 1,
  drawShape: (random) => [drawUniform(ceilingPower, random)],
  logPrior: ([logPower = Number.NaN]) => (holds(ceilingPower, logPower) ? 0 : Number.NEGATIVE_INFINITY),
  curve: (limit, tolerance, [logPower = Number.NaN]) => {
    const power = Math.exp(logPower);
    const atLimit = (1 - tolerance) ** -power - 1;
    return (flow) => -Math.expm1(-Math.log1p(atLimit * (flow / limit) ** power) / power);
  },
};

// A hot end that gives way at once is rarer than one that tires (common practice, no source).
const rarer = 0.05;

const kneeSlope = logarithmic(1.5, 12);
const kneeFloor: Uniform = { low: 0.5, high: 0.97 };

/**
 * A sharp knee: nothing is missing up to it, then ever more along a straight line down to a floor.
 * Coordinates: logarithm of the slope, per flow in units of the limit, and final share.
 */
const knee: OnsetFamily = {
  weight: rarer,
  drawShape: (random) => [drawUniform(kneeSlope, random), drawUniform(kneeFloor, random)],
  logPrior: ([logSlope = Number.NaN, top = Number.NaN]) =>
    holds(kneeSlope, logSlope) && holds(kneeFloor, top) ? 0 : Number.NEGATIVE_INFINITY,
  curve: (limit, tolerance, [logSlope = Number.NaN, top = Number.NaN]) => {
    if (top < smallestTop * tolerance) return null;
    const slope = Math.exp(logSlope);
    return (flow) => Math.min(Math.max(0, tolerance + slope * (flow / limit - 1)), top);
  },
};

const jamShare: Uniform = { low: 0.25, high: 0.97 };

/** A jam: all is well up to the limit, and beyond a share is missing at once. Coordinate: that share. */
const jam: OnsetFamily = {
  weight: rarer,
  drawShape: (random) => [drawUniform(jamShare, random)],
  logPrior: ([top = Number.NaN]) => (holds(jamShare, top) ? 0 : Number.NEGATIVE_INFINITY),
  curve: (limit, tolerance, [top = Number.NaN]) =>
    top < smallestTop * tolerance ? null : (flow) => (flow < limit ? 0 : top),
};

/** The families between which the readings decide; none of them is thought to be the truth. */
export const onsetFamilies: readonly OnsetFamily[] = [threshold, sCurve, ceiling, knee, jam];
