import { choleskyFactor } from './cholesky.ts';
import type { RandomSource } from './random.ts';

/** What a smooth curve was measured at: `x` ascending, `y` with the variance of each under some states of knowledge. */
interface MeasuredCurve {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Equally likely beforehand; in each a variance for every y. */
  readonly variances: readonly (readonly number[])[];
}

/** Curves that measurements leave possible, each in a row of its own with a place for every point of the grid. */
export interface SmoothCurves {
  readonly grid: readonly number[];
  readonly count: number;
  readonly values: Float64Array;
}

/** How wiggly a curve may be: over what distance it stays alike, and by how much it varies. */
interface Smoothness {
  readonly reach: number;
  readonly height: number;
}

interface Candidate extends Smoothness {
  /** Lower triangle of the factor of the covariance of y. */
  readonly factor: readonly (readonly number[])[];
  /** The factor's solution for y. */
  readonly solved: readonly number[];
  readonly logLikelihood: number;
}

const reaches = 6;
/** The longest reach, in ranges of x. */
const longest = 4;
const heights = [0.7, 2, 6, 16];
/** Curves that are drawn at once, since what is done for the first serves them all. */
const groupSize = 120;
/** Points of the grid, if there are not more places that were measured. */
const gridPoints = 25;
/** What keeps a covariance of neighbours that are almost alike positive, as a share of the variance. */
const jitter = 1e-7;
/** The level of the whole curve is known to so many times the spread of y. */
const levelSpread = 10;

/**
 * Draws smooth curves through measurements: a Gaussian process with a Matérn covariance of order 5/2, whose reach and
 * height are as uncertain as the measurements leave them (Rasmussen and Williams, Gaussian Processes for Machine Learning,
 * 2006, equations 2.19, 2.30 and 4.17). It needs two or more different x.
 */
export function smoothCurves(measured: MeasuredCurve, count: number, random: RandomSource): SmoothCurves {
  const { x, y } = measured;
  const grid = fineGrid(x);
  const level = y.reduce((sum, value) => sum + value, 0) / y.length;
  const spread = Math.sqrt(y.reduce((sum, value) => sum + (value - level) ** 2, 0) / y.length) || 1;
  const scaled = {
    x,
    y: y.map((value) => (value - level) / spread),
    variances: measured.variances.map((own) => own.map((variance) => variance / spread ** 2)),
  };
  const values = new Float64Array(count * grid.length);
  let drawn = 0;
  for (const { candidate, groups } of chosen(candidatesOf(scaled), Math.ceil(count / groupSize))) {
    const last = Math.min(count, drawn + groups * groupSize);
    putCurves(candidate, x, grid, values.subarray(drawn * grid.length, last * grid.length), random);
    drawn = last;
  }
  return { grid, count, values: values.map((value) => level + spread * value) };
}

/** Candidates with how many groups of curves each gives, by how likely it is: evenly along their cumulated probability. */
function chosen(candidates: readonly Candidate[], count: number) {
  const best = Math.max(...candidates.map(({ logLikelihood }) => logLikelihood));
  const weights = candidates.map(({ logLikelihood }) => Math.exp(logLikelihood - best));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  let [sum, given] = [0, 0];
  return candidates.flatMap((candidate, index) => {
    sum += (weights[index] ?? 0) / whole;
    const groups = Math.min(count, Math.round(count * sum)) - given;
    given += groups;
    return groups > 0 ? [{ candidate, groups }] : [];
  });
}

/** The places that were measured, and others evenly between them. */
function fineGrid(x: readonly number[]): number[] {
  const parts = Math.max(1, Math.ceil((gridPoints - 1) / (x.length - 1)));
  return x.flatMap((at, index) => {
    const next = x[index + 1];
    return next === undefined
      ? [at]
      : Array.from({ length: parts }, (_, part) => at + ((next - at) * part) / parts);
  });
}

function candidatesOf({ x, y, variances }: MeasuredCurve): Candidate[] {
  const range = (x.at(-1) ?? 0) - (x[0] ?? 0);
  const shortest = (0.8 * range) / (x.length - 1);
  return Array.from({ length: reaches }, (_, index) => {
    const reach = shortest * ((longest * range) / shortest) ** (index / (reaches - 1));
    const alike = x.map((at, row) => x.slice(0, row + 1).map((other) => likeness(at - other, reach)));
    return heights.flatMap((height) => variances.map((own) => candidateOf({ reach, height }, alike, y, own)));
  }).flat();
}

function candidateOf(
  smoothness: Smoothness,
  alike: readonly (readonly number[])[],
  y: readonly number[],
  variances: readonly number[],
): Candidate {
  const factor = choleskyFactor(
    alike.map((cells, row) =>
      cells.map(
        (cell, column) => covariance(cell, smoothness) + (row === column ? (variances[row] ?? 0) : 0),
      ),
    ),
  );
  const solved = solvedLower(factor, y);
  const logLikelihood = factor.reduce(
    (sum, row, index) => sum - (solved[index] ?? 0) ** 2 / 2 - Math.log(row[index] ?? Number.NaN),
    0,
  );
  return { ...smoothness, factor, solved, logLikelihood };
}

/** How far two values at a distance go together, from 1 to 0: Matérn's correlation of order 5/2. */
function likeness(distance: number, reach: number): number {
  const scaled = (Math.sqrt(5) * Math.abs(distance)) / reach;
  return (1 + scaled + scaled ** 2 / 3) * Math.exp(-scaled);
}

/** Covariance of two values that go together so far: of the level of the whole curve, and of its course. */
function covariance(alike: number, { height }: Smoothness): number {
  return levelSpread ** 2 + height ** 2 * (alike + (alike === 1 ? jitter : 0));
}

/** Solves L·z = y for the lower triangle L. */
function solvedLower(factor: readonly (readonly number[])[], y: readonly number[]): number[] {
  const solved: number[] = [];
  for (const [index, row] of factor.entries()) {
    let rest = y[index] ?? 0;
    for (let column = 0; column < index; column++) rest -= (row[column] ?? 0) * (solved[column] ?? 0);
    solved.push(rest / (row[index] ?? 1));
  }
  return solved;
}

/** Draws curves at the points of the grid, given what was measured at `x`, into rows. */
function putCurves(
  { factor, solved, ...smoothness }: Candidate,
  x: readonly number[],
  grid: readonly number[],
  rows: Float64Array,
  random: RandomSource,
): void {
  const between = (at: number, other: number) =>
    covariance(likeness(at - other, smoothness.reach), smoothness);
  const known = grid.map((at) =>
    solvedLower(
      factor,
      x.map((other) => between(at, other)),
    ),
  );
  const means = known.map((own) => product(own, solved));
  const spread = choleskyFactor(
    grid.map((at, row) =>
      grid
        .slice(0, row + 1)
        .map((other, column) => between(at, other) - product(known[row] ?? [], known[column] ?? [])),
    ),
  );
  putNormal(Float64Array.from(means), Float64Array.from(spread.flat()), rows, random);
}

/** Draws from a multivariate normal distribution, by its means and the rows of the lower triangle of its factor. */
function putNormal(
  means: Float64Array,
  triangle: Float64Array,
  rows: Float64Array,
  random: RandomSource,
): void {
  const size = means.length;
  const normals = new Float64Array(size);
  for (let start = 0; start < rows.length; start += size) {
    for (let point = 0; point < size; point++) normals[point] = random.normal();
    let cell = 0;
    for (let point = 0; point < size; point++) {
      let value = means[point] ?? 0;
      for (let column = 0; column <= point; column++)
        value += (triangle[cell++] ?? 0) * (normals[column] ?? 0);
      rows[start + point] = value;
    }
  }
}

function product(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let index = 0; index < one.length; index++) sum += (one[index] ?? 0) * (other[index] ?? 0);
  return sum;
}
