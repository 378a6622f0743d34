import { drawFromCells, type LikelyCells, likelyCells } from '../../statistics/likely-cells.ts';
import { type RandomSource, randomSource } from '../../statistics/random.ts';
import type { DryingData } from './drying-data.ts';
import { type DryingCourse, type DryingFamily, dryingFamilies } from './drying-families.ts';
import { type DryingLine, dryingLine } from './drying-line.ts';

/** One drying that the readings leave possible; masses in g, times in s. */
export interface PossibleDrying {
  readonly dryMass: number;
  /** Of the readings; the family's times are shares of it. */
  readonly last: number;
  /** Water at time 0. */
  readonly water: number;
  readonly family: DryingFamily;
  /** Its coordinates; a plain list, since there are thousands. */
  readonly point: readonly [number, number, number];
}

/** The dryings that the readings leave possible, and how probable each course is. */
export interface PossibleDryings {
  readonly dryings: readonly PossibleDrying[];
  readonly probabilities: Readonly<Record<DryingCourse, number>>;
}

const draws = 2500;

/** A family that fits worse than another by e to that power gets none of the draws. */
const hopeless = 16;

/** How likely a family of each course is beforehand, as ratios (common practice, no source). */
const priorWeights = { steady: 3, twoStages: 1, lateStart: 1 } as const satisfies Record<
  DryingCourse,
  number
>;

/** Masses at some times. */
export function massesAt(
  { dryMass, water, last, family, point }: PossibleDrying,
  times: readonly number[],
): Float64Array {
  const left = new Float64Array(times.length);
  family.putLeft(
    Float64Array.from(point),
    Float64Array.from(times, (time) => time / last),
    left,
  );
  return left.map((share) => dryMass + water * share);
}

/**
 * Draws dryings from the state of knowledge that the readings leave, over all families: each by the mean over its shapes
 * of how well they fit (Bayes factors; Kass and Raftery, Journal of the American Statistical Association 90 (1995)
 * 773-795), and within a family by the likelihood. Null where no family fits.
 */
export function possibleDryings(data: DryingData): PossibleDryings | null {
  const line = dryingLine(data);
  if (line === null) return null;
  let best = Number.NEGATIVE_INFINITY;
  const searched = dryingFamilies.map((family) => {
    const found = searchedFamily(family, line, best - hopeless);
    best = Math.max(best, found.cells.logMean);
    return found;
  });
  if (best === Number.NEGATIVE_INFINITY) return null;
  const weights = searched.map(
    ({ family, cells }) => priorWeights[family.course] * Math.exp(cells.logMean - best),
  );
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const random = randomSource('dryingCurve');
  const probabilities = { steady: 0, twoStages: 0, lateStart: 0 };
  const dryings = searched.flatMap((each, index) => {
    const probability = (weights[index] ?? 0) / whole;
    probabilities[each.family.course] += probability;
    return drawnDryings(each, line, Math.round(draws * probability), random);
  });
  return { dryings, probabilities };
}

interface SearchedFamily {
  readonly family: DryingFamily;
  readonly logDensity: (point: Float64Array) => number;
  readonly cells: LikelyCells;
}

/** Shortest and longest time constant that are sought, as shares of the whole time. */
const shortest = 0.01;
/** A second stage that is slower still does not show within the readings. */
const longest = { steady: 30, twoStages: 2, lateStart: 30 } as const satisfies Record<DryingCourse, number>;

function searchedFamily(family: DryingFamily, line: DryingLine, floor: number): SearchedFamily {
  const logDensity = (point: Float64Array) => line.logLikelihood(family, point);
  const constant = {
    low: Math.log(shortest),
    high: Math.log(longest[family.course]),
    cells: family.shape.length === 0 ? 24 : 8,
  };
  return { family, logDensity, cells: likelyCells(logDensity, [constant, ...family.shape], floor) };
}

function drawnDryings(
  { family, logDensity, cells }: SearchedFamily,
  line: DryingLine,
  count: number,
  random: RandomSource,
): PossibleDrying[] {
  const dryings: PossibleDrying[] = [];
  drawFromCells(cells, logDensity, count, random, (point) => {
    const { dryMass, water, last } = line.draw(family, point, random);
    const place = [point[0] ?? 0, point[1] ?? 0, point[2] ?? 0] as const;
    if (water > 0) dryings.push({ dryMass, water, last, family, point: place });
  });
  return dryings;
}
