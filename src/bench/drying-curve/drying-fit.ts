import { choleskyFactor } from '../../statistics/cholesky.ts';
import { type NonlinearFit, nonlinearLeastSquares } from '../../statistics/nonlinear-least-squares.ts';
import { type RandomSource, randomSource } from '../../statistics/random.ts';
import type { DryingData } from './drying-data.ts';
import { cylinderShape, type DryingShape, exponentialShape } from './drying-shape.ts';

/** One drying that the readings leave possible; masses in g, time in s. */
export interface PossibleDrying {
  readonly dryMass: number;
  /** Water at time 0. */
  readonly water: number;
  readonly timeConstant: number;
  readonly shape: DryingShape;
}

const draws = 5000;

/** Mass at a time. */
export function massAt({ dryMass, water, timeConstant, shape }: PossibleDrying, time: number): number {
  return dryMass + water * shape.left(time / timeConstant);
}

/** What masses are counted from and in units of, g, and times in units of, s: so that digits are kept. */
interface Scale {
  readonly lightest: number;
  readonly water: number;
  readonly last: number;
}

interface FittedShape {
  readonly shape: DryingShape;
  readonly fit: NonlinearFit;
  /** Probability of the shape, up to a factor that all share. */
  readonly weight: number;
}

/**
 * Draws dryings from the state of knowledge that the readings leave: both shapes, each by how well it fits (Schwarz's
 * criterion, The Annals of Statistics 6 (1978) 461-464, which for equally many parameters compares the sums of
 * squares), with the covariance of its parameters as a multivariate t distribution (JCGM 101:2008, 6.4.8). The scatter
 * is never taken to be less than what rounding by the scale makes. Null where no shape fits.
 */
export function possibleDryings(data: DryingData): PossibleDrying[] | null {
  const { times, masses, resolution } = data;
  const lightest = Math.min(...masses);
  const scale = { lightest, water: Math.max(...masses) - lightest, last: Math.max(...times) };
  if (scale.water < 2 * resolution) return null;
  const fitted = [exponentialShape, cylinderShape].flatMap((shape) => fittedShape(shape, data, scale) ?? []);
  const whole = fitted.reduce((sum, { weight }) => sum + weight, 0);
  if (whole === 0) return null;
  const random = randomSource('dryingCurve');
  return fitted.flatMap(({ shape, fit, weight }) => {
    const drawOne = parameterDraws(fit, resolution, random);
    return Array.from({ length: Math.round((draws * weight) / whole) }, () =>
      dryingOf(drawOne(), shape, scale),
    );
  });
}

function fittedShape(
  shape: DryingShape,
  { times, masses, resolution }: DryingData,
  scale: Scale,
): FittedShape | null {
  const fit = nonlinearLeastSquares({
    model: (time, parameters) => {
      const { dryMass, water, timeConstant } = dryingOf(parameters, shape, { ...scale, lightest: 0 });
      return dryMass + water * shape.left(time / timeConstant);
    },
    start: [-0.02, 1, Math.log(0.3)],
    x: times,
    y: masses.map((mass) => mass - scale.lightest),
  });
  if (!fit.ok) return null;
  const least = (times.length * resolution ** 2) / 12;
  const squares = Math.max(least, fit.value.residualSumOfSquares);
  return {
    shape,
    fit: fit.value,
    weight: (squares / (times.length * scale.water ** 2)) ** (-times.length / 2),
  };
}

/** The time constant is fitted as its logarithm, so that it cannot be negative. */
function dryingOf(
  [dry = Number.NaN, wet = Number.NaN, logConstant = Number.NaN]: readonly number[],
  shape: DryingShape,
  { lightest, water, last }: Scale,
): PossibleDrying {
  return {
    dryMass: lightest + dry * water,
    water: wet * water,
    timeConstant: last * Math.exp(logConstant),
    shape,
  };
}

function parameterDraws(
  { parameters, covariance, degreesOfFreedom, residualStandardDeviation }: NonlinearFit,
  resolution: number,
  random: RandomSource,
): () => number[] {
  const inflation = Math.max(1, resolution / Math.sqrt(12) / residualStandardDeviation);
  const factor = choleskyFactor(
    covariance.map((row, index) => row.slice(0, index + 1).map((cell) => cell * inflation ** 2)),
  );
  return () => {
    const normals = parameters.map(() => random.normal());
    const spread = Math.sqrt(degreesOfFreedom / (2 * random.gamma(degreesOfFreedom / 2)));
    return parameters.map(
      (parameter, row) =>
        parameter +
        spread * (factor[row] ?? []).reduce((sum, cell, column) => sum + cell * (normals[column] ?? 0), 0),
    );
  };
}
