import { evenlySpread } from '../../statistics/evenly-spread.ts';
import type { NestedLine } from '../../statistics/nested-integral.ts';
import { normalQuantile } from '../../statistics/normal-quantile.ts';
import type { DriftOfDrive } from './drift-of-drive.ts';
import type { LadderFit } from './ladder-likelihood.ts';
import type { LadderPosterior } from './ladder-posterior.ts';
import { type LimitCell, limitCell } from './limit-cell.ts';

/** A curve that some of the portions of a posterior fall on. */
export interface CountedCurve {
  readonly fit: LadderFit;
  readonly cell: LimitCell;
  readonly portions: number;
}

/** Curves with a smaller share of the whole are left out: the rims of lines, which are integrated coarsely. */
const leastShare = 1e-5;

/**
 * Divides a posterior into so many equal portions and visits the curves that these fall on: every curve gets its share
 * within one portion, as in systematic sampling.
 */
export function visitEvenCurves(
  { families, likelihood, tolerance }: LadderPosterior,
  portions: number,
  visit: (curve: CountedCurve) => void,
): void {
  const best = Math.max(...families.map(({ limits }) => limits.logIntegral));
  const total = families.reduce((sum, { limits }) => sum + Math.exp(limits.logIntegral - best), 0);
  const passing = new Passing(portions);
  for (const { family, limits } of families) {
    const share = Math.exp(limits.logIntegral - best) / total;
    for (let place = 0; place < limits.nodes.length; place++) {
      const { at = Number.NaN, inner = null } = limits.nodes[place] ?? {};
      const shareOfLimit = shareOf(limits, place, share);
      if (inner === null || !passing.fallsWithin(shareOfLimit)) {
        passing.pass(shareOfLimit);
        continue;
      }
      const cell = limitCell(limits, place);
      visitShapes(inner, shareOfLimit, [], passing, (outer, last, count) => {
        const onset = family.onsets(outer, tolerance)(last);
        if (onset !== null) visit({ fit: likelihood.fit(onset, at), cell, portions: count });
      });
    }
  }
}

/** Where the portions fall while shares are passed one after the other. */
class Passing {
  readonly #portions: number;
  #passed = 0.5;

  constructor(portions: number) {
    this.#portions = portions;
  }

  /** Whether a portion falls within a share that comes next. */
  fallsWithin(share: number): boolean {
    return Math.floor(this.#passed + this.#portions * share) > Math.floor(this.#passed);
  }

  /** Passes a share, and says how many portions fell within. */
  pass(share: number): number {
    const before = Math.floor(this.#passed);
    this.#passed += this.#portions * share;
    return Math.floor(this.#passed) - before;
  }
}

function shareOf({ nodes, widths, logIntegral }: NestedLine, place: number, whole: number): number {
  const log = nodes[place]?.log ?? Number.NEGATIVE_INFINITY;
  return whole * Math.exp(log - logIntegral) * (widths[place] ?? 0);
}

function visitShapes(
  line: NestedLine,
  whole: number,
  outer: readonly number[],
  passing: Passing,
  visit: (outer: readonly number[], last: number, count: number) => void,
): void {
  for (let place = 0; place < line.nodes.length; place++) {
    const { at = Number.NaN, inner = null } = line.nodes[place] ?? {};
    const share = shareOf(line, place, whole);
    if (inner !== null && passing.fallsWithin(share)) {
      visitShapes(inner, share, [...outer, at], passing, visit);
      continue;
    }
    const count = passing.pass(share);
    if (count > 0 && share > leastShare) visit(outer, at, count);
  }
}

/**
 * A point of a curve, by a number of its own: how far its limit lies from that of the curve's cell, by the logarithm.
 * The numbers of all curves spread the points evenly.
 */
export function awayOf({ left, right }: LimitCell, number: number): number {
  while (aways.length <= number) addSpreadPoint(aways.length);
  return left + (right - left) * (aways[number] ?? Number.NaN);
}

/** The drift of the drive at a point that lies so far away, given its standard deviation. */
export function driftOf(
  { fit, cell }: CountedCurve,
  { mean }: DriftOfDrive,
  away: number,
  spread: number,
  number: number,
): number {
  return mean(fit.drift + cell.drift(away)) + spread * (deviates[number] ?? Number.NaN);
}

/** Which flow stands for the lowest steps at a point, as a share of the highest possible one. */
export function referenceOf(number: number): number {
  return references[number] ?? Number.NaN;
}

/** The evenly spread points by their numbers, which are the same for every ladder. */
const aways: number[] = [];
const deviates: number[] = [];
const references: number[] = [];

function addSpreadPoint(number: number): void {
  aways.push(evenlySpread(number, 0));
  deviates.push(normalQuantile(evenlySpread(number, 1)));
  references.push(evenlySpread(number, 2));
}
