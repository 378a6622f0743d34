import { choleskyFactor } from '../statistics/cholesky.ts';
import { nonlinearLeastSquares } from '../statistics/nonlinear-least-squares.ts';
import { randomSource } from '../statistics/random.ts';
import type { DryingData } from './drying-data.ts';

/** One drying that the readings leave possible; masses in g, time in s. */
export interface PossibleDrying {
  readonly dryMass: number;
  /** Water at time 0. */
  readonly water: number;
  readonly timeConstant: number;
}

const draws = 5000;

/** Mass at a time. */
export function massAt({ dryMass, water, timeConstant }: PossibleDrying, time: number): number {
  return dryMass + water * Math.exp(-time / timeConstant);
}

/**
 * Draws dryings from the state of knowledge that the readings leave: the fit with the covariance of its parameters,
 * as a multivariate t distribution (JCGM 101:2008, 6.4.8; Gelman et al., Bayesian Data Analysis, 3rd ed., 14.2). The
 * scatter is never taken to be less than what rounding by the scale makes. Null where no exponential fits.
 *
 * The time constant is fitted as its logarithm, so that it cannot be negative; masses are fitted as what is above the
 * lightest reading, so that small losses of heavy spools keep their digits.
 */
export function possibleDryings({ times, masses, resolution }: DryingData): PossibleDrying[] | null {
  const lightest = Math.min(...masses);
  const last = Math.max(...times);
  const water = Math.max(...masses) - lightest;
  if (water < 2 * resolution) return null;
  const fit = nonlinearLeastSquares({
    model: (time, [dry = 0, wet = 0, logConstant = 0]) =>
      dry * water + wet * water * Math.exp(-time / (last * Math.exp(logConstant))),
    start: [-0.02, 1, Math.log(0.3)],
    x: times,
    y: masses.map((mass) => mass - lightest),
  });
  if (!fit.ok) return null;
  const { parameters, covariance, degreesOfFreedom, residualStandardDeviation } = fit.value;
  const least = resolution / Math.sqrt(12);
  const inflation = Math.max(1, least / residualStandardDeviation);
  const factor = choleskyFactor(
    covariance.map((row, index) => row.slice(0, index + 1).map((cell) => cell * inflation ** 2)),
  );
  const random = randomSource('dryingCurve');
  return Array.from({ length: draws }, () => {
    const normals = parameters.map(() => random.normal());
    const scale = Math.sqrt(degreesOfFreedom / (2 * random.gamma(degreesOfFreedom / 2)));
    const [dry = 0, wet = 0, logConstant = 0] = parameters.map(
      (parameter, row) =>
        parameter +
        scale * (factor[row] ?? []).reduce((sum, cell, column) => sum + cell * (normals[column] ?? 0), 0),
    );
    return {
      dryMass: lightest + dry * water,
      water: wet * water,
      timeConstant: last * Math.exp(logConstant),
    };
  });
}
