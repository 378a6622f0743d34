import { driftDeviation, driftMean } from './drift-of-drive.ts';
import type { LadderStep } from './flow-ladder-steps.ts';
import type { Onset } from './onset-families.ts';
import { type RepeatabilityNode, repeatabilityNodes, sums } from './repeatability-nodes.ts';

/** How well a curve explains a ladder, and what it leaves open about the plateau before the onset. */
export interface LadderFit {
  readonly onset: Onset;
  readonly logLikelihood: number;
  /** Logarithm of the ratio at the lowest step, were nothing missing there. */
  readonly plateau: number;
  /** Fall of the logarithm of the ratio per flow in units of the limit: mean and variance. */
  readonly drift: number;
  readonly driftVariance: number;
}

/** The bench as the likelihood sees it. */
export interface LadderBench {
  readonly steps: readonly LadderStep[];
  /** Relative standard uncertainty of the fed length. */
  readonly feedLengthUncertainty: number;
  /** How closely the flows rise with the time of the run, 0 to 1: a drift of the scale then looks like one of the drive. */
  readonly orderByFlow: number;
}

const driftPrecision = 1 / driftDeviation ** 2;

/**
 * No family of curves is the truth, so a predicted deficit is trusted to this part of itself; and extrusion past the
 * onset is unsteady, which repeats show and single readings do not. Chosen by coverage over simulated ladders of
 * foreign families.
 */
const modelDoubt = 0.016;
const doubtOfSingles = 0.03;

/** About the share that a usual step of flow makes a difference of past the onset. */
const poorRepeatability = 0.02;
/** Below a curve's onset nothing of it needs to be laid over the steps. */
const allDelivered = 1 - 1e-9;
/** Nodes of the repeatability are left out where they are less probable than the best by e to that power. */
const negligible = 5;
/** By which the logarithm bends at least from node to node, given their distance. */
const bend = 1.5;
/** A product of variances is put into a logarithm before it can underflow. */
const smallProduct = 1e-200;

/**
 * The likelihood of the step means and of the scatter within steps, given a curve and its limit. The repeatability is
 * summed over nodes; the ratio at the lowest step and the linear drift are integrated out: given the rest the
 * logarithms of the ratios are linear in both (Gelman et al., Bayesian Data Analysis, 3rd ed., 14.8). One object
 * serves one ladder; it works in arrays of its own, since it is asked some thousand times.
 */
export class LadderLikelihood {
  readonly #nodes: readonly RepeatabilityNode[];
  /** The node that `roughly` goes by. */
  readonly #rough: number;
  readonly #first: number;
  readonly #flows: Float64Array;
  readonly #logFlows: Float64Array;
  readonly #logRatios: Float64Array;
  /** The part of itself that a deficit is doubted by. */
  readonly #trust: Float64Array;
  /** Logarithms of the ratios as they would be if nothing were missing, and the variances of the model's doubt. */
  readonly #whole: Float64Array;
  readonly #doubts: Float64Array;
  /** The first step at which something is missing, and one over the limit. */
  #active = 0;
  #inverse = 1;
  /** The node that was the most probable one last, which is near the next one. */
  #probable: number;
  readonly #logs: Float64Array;
  readonly #plateaus: Float64Array;
  readonly #drifts: Float64Array;
  readonly #driftVariances: Float64Array;

  constructor({ steps, feedLengthUncertainty }: LadderBench) {
    this.#nodes = repeatabilityNodes(steps, feedLengthUncertainty);
    this.#probable = this.#nodes.length >> 1;
    this.#rough = this.#nodes.findIndex(({ repeatability }) => repeatability >= poorRepeatability);
    this.#first = steps[0]?.flow ?? Number.NaN;
    this.#flows = Float64Array.from(steps, ({ flow }) => flow);
    this.#logFlows = this.#flows.map(Math.log);
    this.#logRatios = Float64Array.from(steps, ({ meanLogRatio }) => meanLogRatio);
    this.#trust = Float64Array.from(steps, ({ count }) =>
      count > 1 ? modelDoubt : Math.hypot(modelDoubt, doubtOfSingles),
    );
    this.#whole = new Float64Array(steps.length);
    this.#doubts = new Float64Array(steps.length);
    const room = () => new Float64Array(this.#nodes.length);
    [this.#logs, this.#plateaus, this.#drifts, this.#driftVariances] = [room(), room(), room(), room()];
  }

  /**
   * Logarithm of the likelihood were readings to repeat poorly. Its hills are broad: from afar they show the way to
   * the narrow ones of `fit`.
   */
  roughly(onset: Onset, logLimit: number): number {
    this.#lay(onset, logLimit);
    return this.#fitNode(this.#rough);
  }

  /** How well a curve with the logarithm of its limit in mm3/s explains the ladder. */
  fit(onset: Onset, logLimit: number): LadderFit {
    this.#lay(onset, logLimit);
    const start = this.#probable;
    const here = this.#fitNode(start);
    const [high, highLog] = this.#goOn(start, 1, here, here);
    const [low, best] = this.#goOn(start, -1, here, highLog);
    return this.#average(onset, low, high, best);
  }

  /** Goes over nodes from one to a side until the next is negligible; where it ended, and the best logarithm so far. */
  #goOn(start: number, side: 1 | -1, startLog: number, bestLog: number): readonly [number, number] {
    let [index, best, log] = [start, bestLog, startLog];
    // The logarithms lie on a parabola nearly, and the slope towards a node changes by that from one to the next.
    let next = Number.POSITIVE_INFINITY;
    while (next > best - negligible && index + side >= 0 && index + side < this.#nodes.length) {
      index += side;
      const before = log;
      log = this.#fitNode(index);
      next = log < before ? 2 * log - before - bend : log;
      if (log > best) {
        best = log;
        this.#probable = index;
      }
    }
    return [index, best];
  }

  /** Lays a curve over the steps. */
  #lay(onset: Onset, logLimit: number): void {
    const inverse = Math.exp(-logLimit);
    this.#inverse = inverse;
    this.#active = this.#flows.length;
    for (let step = this.#flows.length - 1; step >= 0; step--) {
      const flow = (this.#flows[step] ?? 0) * inverse;
      const delivered = onset.delivered(flow, (this.#logFlows[step] ?? 0) - logLimit);
      if (delivered > allDelivered) return;
      const doubt = (this.#trust[step] ?? 0) * (1 / delivered - 1);
      this.#whole[step] = (this.#logRatios[step] ?? 0) - Math.log(delivered);
      this.#doubts[step] = doubt * doubt;
      this.#active = step;
    }
  }

  /** Plateau and drift by weighted least squares at one repeatability, and the likelihood with both integrated out. */
  #fitNode(index: number): number {
    const node = this.#nodes[index];
    if (node === undefined) return Number.NEGATIVE_INFINITY;
    const { variances, before } = node;
    const inverse = this.#inverse;
    const place = sums * this.#active;
    let w = before[place] ?? 0;
    let wx = (before[place + 1] ?? 0) * inverse;
    let wxx = driftPrecision + (before[place + 2] ?? 0) * inverse * inverse;
    let wz = before[place + 3] ?? 0;
    let wxz = driftPrecision * driftMean + (before[place + 4] ?? 0) * inverse;
    let wzz = driftPrecision * driftMean ** 2 + (before[place + 5] ?? 0);
    let logVariances = before[place + 6] ?? 0;
    let product = 1;
    for (let step = this.#active; step < variances.length; step++) {
      const variance = (variances[step] ?? 0) + (this.#doubts[step] ?? 0);
      const weight = 1 / variance;
      const x = (this.#first - (this.#flows[step] ?? 0)) * inverse;
      const z = this.#whole[step] ?? 0;
      w += weight;
      wx += weight * x;
      wxx += weight * x * x;
      wz += weight * z;
      wxz += weight * x * z;
      wzz += weight * z * z;
      product *= variance;
      if (product < smallProduct) {
        logVariances += Math.log(product);
        product = 1;
      }
    }
    const determinant = w * wxx - wx * wx;
    const plateau = (wxx * wz - wx * wxz) / determinant;
    const drift = (w * wxz - wx * wz) / determinant;
    const misfit = wzz - plateau * wz - drift * wxz;
    const log = node.log - 0.5 * (misfit + logVariances + Math.log(product * determinant));
    this.#logs[index] = log;
    this.#plateaus[index] = plateau;
    this.#drifts[index] = drift;
    this.#driftVariances[index] = w / determinant;
    return log;
  }

  /** The mixture of the nodes from one to another, each with the weight of its likelihood. */
  #average(onset: Onset, low: number, high: number, best: number): LadderFit {
    let sum = 0;
    let plateau = 0;
    let mean = 0;
    let square = 0;
    for (let index = low; index <= high; index++) {
      const weight = Math.exp((this.#logs[index] ?? 0) - best);
      const drift = this.#drifts[index] ?? 0;
      sum += weight;
      plateau += weight * (this.#plateaus[index] ?? 0);
      mean += weight * drift;
      square += weight * (drift * drift + (this.#driftVariances[index] ?? 0));
    }
    const drift = mean / sum;
    return {
      onset,
      logLikelihood: best + Math.log(sum),
      plateau: plateau / sum,
      drift,
      driftVariance: square / sum - drift * drift,
    };
  }
}
