import { normalQuantile } from '../../statistics/normal-quantile.ts';
import type { Range } from '../../units/canonical.ts';

/** One curve of a family, with flows in units of its limit. */
export interface Onset {
  /** Logarithm of the prior density over the family's coordinates. */
  readonly logPrior: number;
  /** The share of the feed that is delivered at a flow, whose logarithm is given too; never rises. */
  readonly delivered: (flow: number, logFlow: number) => number;
}

/** A coordinate of a family's shapes, for integrals over it. */
interface ShapeCoordinate extends Range {
  /** How far from each other shapes are that the readings of a usual ladder tell apart. */
  readonly distance: number;
  /** Distance of nodes in standard deviations. */
  readonly spacing: number;
  /** Where the readings show the coordinate: its quantile in the prior, given what the highest step is missing. */
  readonly shown?: (missing: number) => number;
}

/**
 * A family of curves for the share of the feed that is delivered as the commanded flow grows past a limit. Each curve
 * is laid out by its limit, the flow at which the missing share equals the tolerance: that is what the readings tell
 * most about, and what is asked for. How steep the curve is there comes next, and is the first coordinate.
 */
export interface OnsetFamily {
  /** Logarithm of how probable it is beforehand, against one of the usual families. */
  readonly logWeight: number;
  readonly coordinates: readonly ShapeCoordinate[];
  /** Distance of limits in standard deviations: the limit is asked for, and few coordinates leave time for more. */
  readonly limitSpacing: number;
  /** The shape at quantiles of the prior, each from 0 to 1 without the ends. */
  readonly shapeAt: (quantiles: readonly number[], tolerance: number) => readonly number[];
  /** The curves along the last coordinate, the others being given; null where a shape cannot have a limit. */
  readonly onsets: (outer: readonly number[], tolerance: number) => (last: number) => Onset | null;
}

const logarithmic = (low: number, high: number): Range => ({ low: Math.log(low), high: Math.log(high) });

// A value that is equally probable between two ends is laid out by its log odds, which have a smooth density.
const logOdds = (quantile: number) => Math.log(quantile / (1 - quantile));
const valueAt = ({ low, high }: Range, odds: number) => low + (high - low) / (1 + Math.exp(-odds));

function logLogistic(odds: number): number {
  const away = Math.abs(odds);
  return -away - 2 * Math.log1p(Math.exp(-away));
}

const logNormal = (deviate: number) => -0.5 * (deviate * deviate + Math.log(2 * Math.PI));

/** Beyond an end a millionth of the prior is left. */
const odds: ShapeCoordinate = { low: -14, high: 14, distance: 0.5, spacing: 1.2 };
/** How steep, as a logarithm: the limit follows from it most, so that its nodes stand closer. */
const slopes: ShapeCoordinate = { low: -12, high: 12, distance: 0.1, spacing: 0.9 };

// How the onsets of hot ends differ is common practice, no source: from a breakdown within a few hundredths of the
// flow to a slow bend over half of it, levelling off anywhere between a fifth and nearly all of the feed missing.
const finalShare: Range = { low: 0.15, high: 0.97 };
const shares: ShapeCoordinate = { ...odds, shown: shareShown(finalShare) };

/** The quantile of a share that is equally probable between two ends. */
function shareShown({ low, high }: Range): (missing: number) => number {
  return (missing) => Math.min(0.98, Math.max(0.02, (missing - low) / (high - low)));
}

/** A curve that levels off near the tolerance would have no steep crossing to speak of. */
const smallestTop = 1.2;

const stretchMedian = Math.log(0.4);
const stretchSpread = 0.9;
const onsetPower: Range = { low: 1, high: 3 };

/**
 * Nothing is missing up to a threshold; beyond, an exponential approach to a final share after a power onset.
 * Coordinates: logarithm of the slope at the limit, which stands for the stretch in units of the limit; log odds of
 * the power and of the final share.
 */
const threshold: OnsetFamily = {
  logWeight: 0,
  coordinates: [slopes, odds, shares],
  limitSpacing: 0.6,
  shapeAt: ([stretch = 0.5, power = 0.5, share = 0.5], tolerance) => {
    const [powerOdds, shareOdds] = [logOdds(power), logOdds(share)];
    const top = Math.max(valueAt(finalShare, shareOdds), smallestTop * tolerance);
    const logStretch = stretchMedian + stretchSpread * normalQuantile(stretch);
    const slope = logSlope(valueAt(onsetPower, powerOdds), top, logArgumentAt(tolerance, top), tolerance);
    return [slope - logStretch, powerOdds, shareOdds];
  },
  onsets: ([slope = 0, powerOdds = 0], tolerance) => {
    const power = valueAt(onsetPower, powerOdds);
    const logPriorOutside = logLogistic(powerOdds) - Math.log(stretchSpread);
    return (shareOdds) => {
      const top = valueAt(finalShare, shareOdds);
      if (top < smallestTop * tolerance) return null;
      const logArgument = logArgumentAt(tolerance, top);
      const logStretch = logSlope(power, top, logArgument, tolerance) - slope;
      const start = 1 - Math.exp(logStretch + logArgument / power);
      if (start < 0) return null;
      const deviate = (logStretch - stretchMedian) / stretchSpread;
      return {
        logPrior: logPriorOutside + logNormal(deviate) + logLogistic(shareOdds),
        delivered: (flow) =>
          flow <= start
            ? 1
            : 1 - top + top * Math.exp(-Math.exp(power * (Math.log(flow - start) - logStretch))),
      };
    };
  },
};

/** Logarithm of the exponent at which a curve that levels off at a top reaches the tolerance. */
function logArgumentAt(tolerance: number, top: number): number {
  return Math.log(-Math.log1p(-tolerance / top));
}

/** Logarithm of the slope at the limit of a curve whose stretch is 1. */
function logSlope(power: number, top: number, logArgument: number, tolerance: number): number {
  return Math.log((top - tolerance) * power) + (1 - 1 / power) * logArgument;
}

const hillPower = logarithmic(5, 120);

/**
 * An S-curve without a threshold, in the form of Hill's equation.
 * Coordinates: log odds of the logarithm of the power and of the final share.
 */
const sCurve: OnsetFamily = {
  logWeight: 0,
  coordinates: [slopes, shares],
  limitSpacing: 0.5,
  shapeAt: (quantiles) => quantiles.map(logOdds),
  onsets: ([powerOdds = 0], tolerance) => {
    const power = Math.exp(valueAt(hillPower, powerOdds));
    const logPriorOutside = logLogistic(powerOdds);
    return (shareOdds) => {
      const top = valueAt(finalShare, shareOdds);
      if (top < smallestTop * tolerance) return null;
      const against = top / tolerance - 1;
      return {
        logPrior: logPriorOutside + logLogistic(shareOdds),
        delivered: (_, logFlow) => 1 - top / (1 + against * Math.exp(-power * logFlow)),
      };
    };
  },
};

const ceilingPower = logarithmic(4, 100);

/**
 * The delivered flow bends over into a ceiling, as when the melt zone can do no more: delivered = commanded ×
 * (1 + (commanded/ceiling)^power)^(-1/power). Coordinate: log odds of the logarithm of the power.
 */
const ceiling: OnsetFamily = {
  logWeight: 0,
  coordinates: [{ ...slopes, spacing: 0.4 }],
  limitSpacing: 0.3,
  shapeAt: (quantiles) => quantiles.map(logOdds),
  onsets: (_, tolerance) => (powerOdds) => {
    const power = Math.exp(valueAt(ceilingPower, powerOdds));
    const atLimit = (1 - tolerance) ** -power - 1;
    return {
      logPrior: logLogistic(powerOdds),
      delivered: (_flow, logFlow) => Math.exp(-Math.log1p(atLimit * Math.exp(power * logFlow)) / power),
    };
  },
};

// A hot end that gives way at once is rarer than one that tires (common practice, no source).
const rarer = Math.log(0.05);

const kneeSlope = logarithmic(1.5, 12);
const kneeFloor: Range = { low: 0.5, high: 0.97 };

/**
 * A sharp knee: nothing is missing up to it, then ever more along a straight line down to a floor.
 * Coordinates: log odds of the logarithm of the slope, per flow in units of the limit, and of the final share.
 */
const knee: OnsetFamily = {
  logWeight: rarer,
  coordinates: [slopes, { ...odds, shown: shareShown(kneeFloor) }],
  limitSpacing: 0.5,
  shapeAt: (quantiles) => quantiles.map(logOdds),
  onsets: ([slopeOdds = 0], tolerance) => {
    const slope = Math.exp(valueAt(kneeSlope, slopeOdds));
    const logPriorOutside = logLogistic(slopeOdds);
    return (shareOdds) => {
      const top = valueAt(kneeFloor, shareOdds);
      if (top < smallestTop * tolerance) return null;
      return {
        logPrior: logPriorOutside + logLogistic(shareOdds),
        delivered: (flow) => 1 - Math.min(Math.max(0, tolerance + slope * (flow - 1)), top),
      };
    };
  },
};

/** The families between which the readings decide; none of them is thought to be the truth. */
export const onsetFamilies: readonly OnsetFamily[] = [threshold, sCurve, ceiling, knee];

const jamShare: Range = { low: 0.25, high: 0.97 };

/**
 * A jam: all is well up to the limit, and beyond a share is missing at once. No readings tell where between two steps.
 * Coordinate: log odds of the share.
 */
export const jam: OnsetFamily = {
  logWeight: rarer,
  coordinates: [{ ...odds, spacing: 1, shown: shareShown(jamShare) }],
  limitSpacing: 1,
  shapeAt: (quantiles) => quantiles.map(logOdds),
  onsets: (_, tolerance) => (shareOdds) => {
    const top = valueAt(jamShare, shareOdds);
    if (top < smallestTop * tolerance) return null;
    return { logPrior: logLogistic(shareOdds), delivered: (flow) => (flow < 1 ? 1 : 1 - top) };
  },
};
