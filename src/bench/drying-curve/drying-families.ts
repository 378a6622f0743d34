import type { Axis } from '../../statistics/likely-cells.ts';
import { cylinderLeft } from './drying-shape.ts';

/** What a spool may do while it dries. */
export type DryingCourse = 'steady' | 'twoStages' | 'lateStart';

/**
 * A family of drying curves. Times are shares of the whole time that was weighed over; a point begins with the logarithm
 * of the time constant of the last exponential, and the rest is its shape.
 */
export interface DryingFamily {
  readonly course: DryingCourse;
  /** Puts the shares of the water that are left after some times into a room of their number. */
  readonly putLeft: (point: Float64Array, times: Float64Array, into: Float64Array) => void;
  /** Coordinates besides that of the time constant. */
  readonly shape: readonly Axis[];
}

/** ln of how many times as fast the first stage is as the second, and the share of the water that the second has. */
const stages: readonly Axis[] = [
  { low: Math.log(2), high: Math.log(40), cells: 5 },
  { low: 0.03, high: 0.97, cells: 6 },
];

/** ln of when half of the full rate is reached, and ln of how gradually, as a share of that. */
const delays: readonly Axis[] = [
  { low: Math.log(0.01), high: Math.log(0.5), cells: 6 },
  { low: Math.log(0.05), high: Math.log(1), cells: 3 },
];

/** ln of the time in which a reel comes near to the dryer's temperature, and the share of the full rate at which it begins. */
const warmings: readonly Axis[] = [
  { low: Math.log(0.01), high: Math.log(0.5), cells: 6 },
  { low: 0, high: 0.7, cells: 3 },
];

/** The exponent of the time: below 1 many rates at once, above 1 a rate that rises. */
const slowing: Axis = { low: 0.5, high: 0.95, cells: 4 };
const rising: Axis = { low: 1.05, high: 2, cells: 4 };

/** The families that a drying is sought in. */
export const dryingFamilies: readonly DryingFamily[] = [
  { course: 'steady', putLeft: putExponential, shape: [] },
  { course: 'steady', putLeft: putCylinder, shape: [] },
  { course: 'twoStages', putLeft: putStages, shape: stages },
  { course: 'twoStages', putLeft: putSurfaceAndCylinder, shape: stages },
  { course: 'twoStages', putLeft: putStretched, shape: [slowing] },
  { course: 'lateStart', putLeft: putStretched, shape: [rising] },
  { course: 'lateStart', putLeft: putLate, shape: delays },
  { course: 'lateStart', putLeft: putWarming, shape: warmings },
];

function putExponential({ 0: logConstant = 0 }: Float64Array, times: Float64Array, into: Float64Array): void {
  const rate = Math.exp(-logConstant);
  for (let index = 0; index < times.length; index++) into[index] = Math.exp(-rate * (times[index] ?? 0));
}

function putCylinder({ 0: logConstant = 0 }: Float64Array, times: Float64Array, into: Float64Array): void {
  const rate = Math.exp(-logConstant);
  for (let index = 0; index < times.length; index++) into[index] = cylinderLeft(rate * (times[index] ?? 0));
}

/** A fast exponential and a slow one. */
function putStages(
  { 0: logConstant = 0, 1: logRatio = 0, 2: share = 0 }: Float64Array,
  times: Float64Array,
  into: Float64Array,
): void {
  const slow = Math.exp(-logConstant);
  const fast = slow * Math.exp(logRatio);
  for (let index = 0; index < times.length; index++) {
    const time = times[index] ?? 0;
    into[index] = share * Math.exp(-slow * time) + (1 - share) * Math.exp(-fast * time);
  }
}

/** A fast exponential from the surface, and diffusion out of the strand. */
function putSurfaceAndCylinder(
  { 0: logConstant = 0, 1: logRatio = 0, 2: share = 0 }: Float64Array,
  times: Float64Array,
  into: Float64Array,
): void {
  const slow = Math.exp(-logConstant);
  const fast = slow * Math.exp(logRatio);
  for (let index = 0; index < times.length; index++) {
    const time = times[index] ?? 0;
    into[index] = share * cylinderLeft(slow * time) + (1 - share) * Math.exp(-fast * time);
  }
}

/** An exponential of a power of the time (Kohlrausch, Annalen der Physik 167 (1854) 179; Weibull). */
function putStretched(
  { 0: logConstant = 0, 1: power = 1 }: Float64Array,
  times: Float64Array,
  into: Float64Array,
): void {
  for (let index = 0; index < times.length; index++) {
    into[index] = Math.exp(-Math.exp(power * (Math.log(times[index] ?? 0) - logConstant)));
  }
}

/** One exponential whose rate rises along a logistic curve, as while the reel warms. */
function putLate(
  { 0: logConstant = 0, 1: logDelay = 0, 2: logWidth = 0 }: Float64Array,
  times: Float64Array,
  into: Float64Array,
): void {
  const delay = Math.exp(logDelay);
  const width = delay * Math.exp(logWidth);
  const strength = width * Math.exp(-logConstant);
  const start = softened(-delay / width);
  for (let index = 0; index < times.length; index++) {
    into[index] = Math.exp(strength * (start - softened(((times[index] ?? 0) - delay) / width)));
  }
}

/** One exponential whose rate approaches the full one by an exponential itself. */
function putWarming(
  { 0: logConstant = 0, 1: logWarming = 0, 2: begin = 0 }: Float64Array,
  times: Float64Array,
  into: Float64Array,
): void {
  const [rate, warming] = [Math.exp(-logConstant), Math.exp(logWarming)];
  const behind = (1 - begin) * warming;
  for (let index = 0; index < times.length; index++) {
    const time = times[index] ?? 0;
    into[index] = Math.exp(rate * (behind * (1 - Math.exp(-time / warming)) - time));
  }
}

/** ln(1 + exp(x)): 0 far below 0, x far above. */
function softened(x: number): number {
  return x > 30 ? x : Math.log(1 + Math.exp(x));
}
