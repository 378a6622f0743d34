import type { LineGuess } from '../../statistics/integral-line.ts';
import type { LineAxis } from '../../statistics/line-march.ts';
import { integrateNested, type NestedLine } from '../../statistics/nested-integral.ts';
import type { Range } from '../../units/canonical.ts';
import { type DriftOfDrive, driftOfDrive } from './drift-of-drive.ts';
import { familyDensity } from './family-density.ts';
import { type JamPosterior, jamPosteriors } from './jam-posterior.ts';
import { type LadderBench, LadderLikelihood } from './ladder-likelihood.ts';
import { type OnsetFamily, onsetFamilies } from './onset-families.ts';
import { posteriorSummit } from './posterior-summit.ts';

/** What the readings leave possible. */
export interface LadderPosterior {
  readonly likelihood: LadderLikelihood;
  readonly tolerance: number;
  readonly families: readonly (FamilyPosterior | JamPosterior)[];
  readonly driftOfDrive: DriftOfDrive;
}

/** Curves of one family by the logarithm of the limit, and inside by their shapes; aside is the mean drift. */
interface FamilyPosterior {
  readonly family: OnsetFamily;
  readonly limits: NestedLine;
}

/**
 * A family whose summit is lower than the best one by e to that power is left out: integrals over the summits differ by
 * up to e^7 among families, so that not one curve of a million would be of such a family.
 */
const hopeless = 21;

/** How far outside of the tested flows a limit is looked for. */
const below = 0.9;
const above = 1.35;

/**
 * The state of knowledge that the readings leave: Bayes' theorem over the onset families, equally probable
 * beforehand, their shapes and the limit (JCGM 101:2008, 6.2), with repeatability, plateau and drift integrated out,
 * as integrals over nested lines. No random numbers, so that the same readings give the same numbers.
 */
export function ladderPosterior(bench: LadderBench, tolerance: number): LadderPosterior {
  const likelihood = new LadderLikelihood(bench);
  const [first, last] = [bench.steps[0], bench.steps.at(-1)];
  const limits = {
    low: Math.log(below * (first?.flow ?? Number.NaN)),
    high: Math.log(above * (last?.flow ?? Number.NaN)),
  };
  const missingAtLast =
    1 - Math.exp((last?.meanLogRatio ?? Number.NaN) - (first?.meanLogRatio ?? Number.NaN));
  const outlines = onsetFamilies.map((family) => {
    const density = familyDensity(family, likelihood, limits, tolerance);
    const top = posteriorSummit(family, density, { limits, tolerance, missingAtLast });
    return { family, density, top };
  });
  const best = Math.max(...outlines.map(({ top }) => top.height));
  // Where families with few coordinates explain a ladder, those with many need only be gone over coarsely.
  const simplestFirst = outlines.toSorted(
    (one, other) => one.family.coordinates.length - other.family.coordinates.length,
  );
  let known = Number.NEGATIVE_INFINITY;
  const families = simplestFirst.flatMap(({ family, density, top }) => {
    if (top.height < best - hopeless) return [];
    const axes = axesFrom(family, limits, top.point);
    const line = integrateNested({ axes, along: density.along }, known);
    if (line === null) return [];
    known = Math.max(known, ...line.nodes.map(({ log }) => log));
    return [{ family, limits: line }];
  });
  const jams = jamPosteriors(bench.steps, likelihood, tolerance);
  return {
    likelihood,
    tolerance,
    families: [...families, ...jams],
    driftOfDrive: driftOfDrive(bench.orderByFlow),
  };
}

/** A hundredth of the limit: about what a usual ladder leaves open. */
const usualLimitSpread = 0.01;
const limitCliff = 2;
const shapeCliff = 4;

function axesFrom(
  { coordinates, limitSpacing }: OnsetFamily,
  limits: Range,
  [limit = Number.NaN, ...shape]: readonly number[],
): (LineAxis & LineGuess)[] {
  const outermost = {
    ...limits,
    center: limit,
    spread: usualLimitSpread,
    spacing: limitSpacing,
    cliff: limitCliff,
  };
  const inner = coordinates.map(({ low, high, distance, spacing }, place) => ({
    low,
    high,
    center: shape[place] ?? 0,
    spread: distance,
    spacing,
    cliff: shapeCliff,
  }));
  return [outermost, ...inner];
}
