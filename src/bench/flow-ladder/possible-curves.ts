import type { DriftOfDrive } from './drift-of-drive.ts';
import { awayOf, type CountedCurve, driftOf, referenceOf, visitEvenCurves } from './even-curves.ts';
import type { LadderPosterior } from './ladder-posterior.ts';

/** One curve that the readings leave possible. */
export interface PossibleCurve {
  /** Deficit against the lowest steps at a flow in mm3/s, whose logarithm is given too. */
  readonly deficit: (flow: number, logFlow: number) => number;
  /** Ratio of the lowest steps. */
  readonly baseline: number;
  /** Fall of the delivered share from the lowest step to the limit that is no part of the onset. */
  readonly drift: number;
}

/** Enough for the band of a plot. */
const enoughToDraw = 200;

/** So many curves that stand for equal shares of all that the readings leave possible, given the lowest step in mm3/s. */
export function possibleCurves(
  posterior: LadderPosterior,
  first: number,
  count = enoughToDraw,
): PossibleCurve[] {
  const curves: PossibleCurve[] = [];
  visitEvenCurves(posterior, count, (curve) => {
    for (let part = 0; part < curve.portions; part++) {
      curves.push(curveAt(curve, posterior.driftOfDrive, curves.length + 1, first));
    }
  });
  return curves;
}

function curveAt(counted: CountedCurve, drive: DriftOfDrive, number: number, first: number): PossibleCurve {
  const { fit, cell } = counted;
  const { onset } = fit;
  const away = awayOf(cell, number);
  const drift = driftOf(counted, drive, away, drive.spread(fit.driftVariance), number);
  const logLimit = cell.logLimit + away;
  const limit = Math.exp(logLimit);
  const reference = Math.min(2 * first, limit) * referenceOf(number);
  const atFirst = onset.delivered(first / limit, Math.log(first) - logLimit);
  return {
    deficit: (flow, logFlow) => {
      const delivered = onset.delivered(flow / limit, logFlow - logLimit);
      return 1 - (Math.exp((-drift * (flow - reference)) / limit) * delivered) / atFirst;
    },
    baseline: Math.exp(fit.plateau - (drift * (reference - first)) / limit) * atFirst,
    drift: ((fit.drift + cell.drift(away)) * (limit - first)) / limit,
  };
}
