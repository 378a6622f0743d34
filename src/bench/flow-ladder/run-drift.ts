import { groupedBy } from '../../registry/grouped-by.ts';
import { describe } from '../../statistics/describe.ts';
import type { WeighedPiece } from './flow-ladder-steps.ts';

/**
 * How closely the flows rise with the time of the run, 0 to 1: the correlation of the flow with the place of the row.
 * Where they do, a drift of the scale cannot be told from a drive that slips more at a higher flow.
 */
export function orderByFlow(readings: readonly WeighedPiece[]): number {
  const places = readings.map((_, place) => place);
  const flows = readings.map(({ flow }) => flow);
  const [place, flow] = [describe(places), describe(flows)];
  const covariance =
    places.reduce((sum, at) => sum + (at - place.mean) * ((flows[at] ?? 0) - flow.mean), 0) /
    (readings.length - 1);
  return Math.min(1, Math.abs(covariance / (place.standardDeviation * flow.standardDeviation)));
}

/** What the scale's readings do over the run, as far as repeats at one flow show it. */
interface RunDrift {
  /** Change of the mass from the first reading to the last, as a share. */
  readonly change: number;
  /** Its standard uncertainty. */
  readonly uncertainty: number;
}

/** Fewer degrees of freedom show no drift. */
const fewestDegrees = 4;
/** Repeats scatter that much at least, as a share (common practice, no source). */
const leastScatter = 0.002;

/**
 * The drift by the order of the run, from repeats at the same flow: the slope that all steps share, by least squares
 * within steps (analysis of covariance). Null where repeats are too few.
 */
export function runDrift(readings: readonly WeighedPiece[]): RunDrift | null {
  const last = readings.length - 1;
  const points = readings.map(({ flow, ratio }, place) => ({
    flow,
    time: place / last,
    log: Math.log(ratio),
  }));
  const steps = [...groupedBy(points, ({ flow }) => String(flow)).values()];
  let [times, products, logs] = [0, 0, 0];
  for (const step of steps) {
    const [time, log] = [mean(step.map((each) => each.time)), mean(step.map((each) => each.log))];
    for (const each of step) {
      times += (each.time - time) ** 2;
      products += (each.time - time) * (each.log - log);
      logs += (each.log - log) ** 2;
    }
  }
  const degrees = readings.length - steps.length - 1;
  if (degrees < fewestDegrees || times === 0) return null;
  const change = products / times;
  const variance = Math.max(leastScatter ** 2, (logs - change * products) / degrees);
  return { change, uncertainty: Math.sqrt(variance / times) };
}

function mean(values: readonly number[]): number {
  return describe(values).mean;
}
