import { evenlySpread } from '../../statistics/evenly-spread.ts';
import { climbSimplex, type Summit } from '../../statistics/simplex-climb.ts';
import type { Range } from '../../units/canonical.ts';
import type { FamilyDensity } from './family-density.ts';
import type { OnsetFamily } from './onset-families.ts';

/** What of a ladder says where to look. */
interface LadderOutline {
  /** Range of the logarithm of the limit. */
  readonly limits: Range;
  readonly tolerance: number;
  /** What the highest step is missing against the lowest. */
  readonly missingAtLast: number;
}

// Chosen on 422 ladders, demo, cases and simulated: with half as much, the hill that counts is missed now and then;
// some twenty times as much found a higher one for one family of one of them, and moved its median by a ninth of the
// interval's width.
const shapesPerCoordinate = 5;
const limitParts = 4;
const limitsPerPart = 5;
const earnestClimbs = 2;
const roughEvaluations = 12;
const earnestEvaluations = 15;

/** A climb is at its end when the corners of its simplex differ by less, by the logarithm. */
const level = 0.1;
/** First step of the logarithm of the limit. */
const limitStep = 0.03;

/**
 * The most probable limit and shape, or a place near it: shapes spread over the prior at a row of limits, then climbs
 * from the best in each part of the row, since far-off limits have hills of their own; roughly first, then the best of
 * them in earnest.
 */
export function posteriorSummit(
  family: OnsetFamily,
  { height, roughly }: FamilyDensity,
  outline: LadderOutline,
): Summit {
  const steps = [limitStep, ...family.coordinates.map(({ distance }) => 2 * distance)];
  const climb = (by: FamilyDensity['height'], from: readonly number[], evaluations: number) =>
    climbSimplex(by, from, steps, { evaluations: evaluations * steps.length, level });
  const roughHeight = ([limit = Number.NaN, ...shape]: readonly number[]) => roughly(shape)(limit);
  return startsIn(family, roughly, outline)
    .map((start) => climb(roughHeight, start, roughEvaluations).point)
    .map((point) => ({ point, height: height(point) }))
    .toSorted((one, other) => other.height - one.height)
    .slice(0, earnestClimbs)
    .map(({ point }) => climb(height, point, earnestEvaluations))
    .reduce(higher);
}

/** The best start in each part of the range of limits. */
function startsIn(
  family: OnsetFamily,
  roughly: FamilyDensity['roughly'],
  { limits: { low, high }, tolerance, missingAtLast }: LadderOutline,
): (readonly number[])[] {
  const curves = startingShapes(family, missingAtLast, tolerance).map((shape) => ({
    shape,
    heightAt: roughly(shape),
  }));
  const count = limitParts * limitsPerPart;
  return Array.from({ length: limitParts }, (_, part) => {
    let best = { point: [Number.NaN], height: Number.NaN };
    for (let place = 0; place < limitsPerPart; place++) {
      const limit = low + ((high - low) * (part * limitsPerPart + place + 0.5)) / count;
      for (const { shape, heightAt } of curves) {
        const height = heightAt(limit);
        if (!(height <= best.height)) best = { point: [limit, ...shape], height };
      }
    }
    return best.point;
  });
}

/** Shapes spread over the prior; every other one levels off where the highest step did. */
function startingShapes(
  { coordinates, shapeAt }: OnsetFamily,
  missingAtLast: number,
  tolerance: number,
): (readonly number[])[] {
  return Array.from({ length: shapesPerCoordinate * coordinates.length }, (_, index) => {
    const quantiles = coordinates.map(({ shown }, axis) =>
      shown !== undefined && index % 2 === 0
        ? shown(missingAtLast)
        : 0.01 + 0.98 * evenlySpread(index + 0.5, axis),
    );
    return shapeAt(quantiles, tolerance);
  });
}

const higher = (one: Summit, other: Summit) => (other.height > one.height ? other : one);
