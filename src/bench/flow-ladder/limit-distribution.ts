import { findRoot } from '../../statistics/find-root.ts';
import { weightedQuantiles } from '../../statistics/weighted-quantiles.ts';
import type { DriftOfDrive } from './drift-of-drive.ts';
import { awayOf, type CountedCurve, driftOf, referenceOf, visitEvenCurves } from './even-curves.ts';
import type { LadderPosterior } from './ladder-posterior.ts';

/** Enough for the ends of a 95 % interval to half a hundredth of its width. */
const portions = 1500;
const pointsPerPortion = 4;

/**
 * Quantiles of the flow in mm3/s at which the deficit crosses the tolerance, given the lowest step in mm3/s: each curve
 * is spread over its cell of limits, over what is open of its drift, and over the flows that may stand for "the lowest
 * steps", and each point is carried through to where its deficit crosses (JCGM 101:2008, 7.4).
 */
export function limitDistribution(
  posterior: LadderPosterior,
  first: number,
): (probability: number) => number {
  const drive = posterior.driftOfDrive;
  const logs: number[] = [];
  const weights: number[] = [];
  visitEvenCurves(posterior, portions, (curve) => {
    const { cell, fit } = curve;
    const spread = drive.spread(fit.driftVariance);
    const crossing = crossings(curve, drive, posterior.tolerance, first);
    const past = logs.length + pointsPerPortion * curve.portions;
    for (let number = logs.length + 1; number <= past; number++) {
      const away = awayOf(cell, number);
      logs.push(
        cell.logLimit + away + crossing(driftOf(curve, drive, away, spread, number), referenceOf(number)),
      );
      weights.push(Math.exp(cell.log(away)));
    }
  });
  const quantile = weightedQuantiles(logs, weights);
  return (probability) => Math.exp(quantile(probability));
}

/** Standard deviations of the drift for which crossings are found outright, and nodes between these. */
const reach = 2.2;
const knots = 8;
/** Of the logarithm of the delivered share. */
const accuracy = 1e-4;
/** Of the logarithm of the flow. */
const suddenly = 1e-9;

/** Where the deficit crosses, as the logarithm of the flow in units of the curve's limit. */
type Crossing = (drift: number, reference: number) => number;

/**
 * Crossings of one curve for any drift and any flow, as a share of the highest possible one, that stands for the
 * lowest steps. Between the outermost ones the delivered share is interpolated.
 */
function crossings(
  { fit, cell }: CountedCurve,
  drive: DriftOfDrive,
  tolerance: number,
  first: number,
): Crossing {
  const { onset } = fit;
  const [drift, spread] = [drive.mean(fit.drift), drive.spread(fit.driftVariance)];
  const lowest = first / Math.exp(cell.logLimit);
  const farthest = Math.min(2 * lowest, 1);
  const asked = Math.log(onset.delivered(lowest, Math.log(lowest))) + Math.log1p(-tolerance);
  const room = (logFlow: number) => Math.log(onset.delivered(Math.exp(logFlow), logFlow)) - asked;
  const range = { low: Math.log(0.5 * lowest), high: Math.log(2) };
  const steepness = (room(0) - room(1e-3)) / 1e-3;
  // Whatever the drift, a curve that falls at once crosses where it falls.
  if (room(-suddenly) - room(0) > tolerance) return () => 0;
  const found = (fall: number, reference: number) =>
    findRoot(
      (logFlow) => fall * (Math.exp(logFlow) - reference) - room(logFlow),
      range,
      { at: 0, slope: steepness },
      accuracy,
    );
  const least = drift - reach * spread;
  const near = found(drift + reach * spread, 0);
  const far = found(least, least < 0 ? 0 : farthest);
  const step = (far - near) / (knots - 1);
  const flows: number[] = [];
  const rooms: number[] = [];
  for (let knot = 0; knot < knots; knot++) {
    flows.push(Math.exp(near + knot * step));
    rooms.push(room(near + knot * step));
  }
  return (fall, reference) => {
    const from = farthest * reference;
    let before = (rooms[0] ?? 0) - fall * ((flows[0] ?? 0) - from);
    for (let knot = 1; ; knot++) {
      const after = (rooms[knot] ?? 0) - fall * ((flows[knot] ?? 0) - from);
      if (after <= 0 || knot === knots - 1) return near + step * (knot - after / (after - before));
      before = after;
    }
  };
}
