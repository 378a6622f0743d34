import { type Problem, type Result, refusal, success } from '../../result.ts';
import { leastSquares } from '../../statistics/least-squares.ts';
import { normalFactor, scatterOf } from '../../statistics/scatter.ts';

/** The limit that one trial found, with the nozzle temperature that it ran at. */
export interface LimitPoint {
  /** Nozzle temperature, °C. */
  readonly temperature: number;
  /** Melt flow limit and its 95 % coverage interval, mm3/s. */
  readonly limit: number;
  readonly low: number;
  readonly high: number;
}

/** A straight line of the melt flow limit against the nozzle temperature, with what its 95 % band needs. */
export interface LimitLine {
  /** mm3/s per K. */
  readonly slope: number;
  /** mm3/s at 0 °C: where the line is fixed, not a limit. */
  readonly intercept: number;
  /** Standard uncertainties of the two, widened where the limits scatter; in the same units. */
  readonly slopeUncertainty: number;
  readonly interceptUncertainty: number;
  /** The weighted mean of the temperatures, °C, where the line is known best, and the limit there, mm3/s. */
  readonly centre: { readonly temperature: number; readonly limit: number; readonly uncertainty: number };
  /** Lowest and highest nozzle temperature tested, °C. */
  readonly tested: { readonly low: number; readonly high: number };
  /** Number of limits less the two that a line takes. */
  readonly residualDegreesOfFreedom: number;
  /** Scatter of the limits about the line, relative to what their intervals explain; null without residual freedom. */
  readonly birgeRatio: number | null;
  /** Whether the scatter widens the band. */
  readonly isWidened: boolean;
  /** Those with which the scatter beyond the intervals is known; null where there is none: the intervals alone decide. */
  readonly effectiveDegreesOfFreedom: number | null;
  /** From a standard uncertainty to the half-width of the 95 % band. */
  readonly coverageFactor: number;
}

/** Why there is no line: fewer than two temperatures, or an interval without a width. */
export type LimitLineProblem = Problem<'oneTemperature' | 'noWidth'>;

/**
 * Fits a limit against the nozzle temperature by weighted least squares, each limit with the standard uncertainty that
 * its interval stands for (ISO/TS 28037:2010, clause 6; Bevington and Robinson, Data Reduction and Error Analysis,
 * 3rd ed., 6.3). Several trials at one temperature count as their weighted mean would.
 *
 * Limits that scatter about the line by more than their intervals explain widen the band; see `scatterOf`. With two
 * limits nothing is left to scatter: the band is what the intervals propagate to.
 */
export function fitLimitLine(points: readonly LimitPoint[]): Result<LimitLine, LimitLineProblem> {
  const temperatures = points.map(({ temperature }) => temperature);
  const uncertainties = points.map(({ low, high }) => (high - low) / 2 / normalFactor);
  if (new Set(temperatures).size < 2) return oneTemperature();
  if (!uncertainties.every((uncertainty) => uncertainty > 0)) {
    return refusal('noWidth', 'The interval of a limit has no width', 'Give each limit its 95 % interval.');
  }
  const weights = uncertainties.map((uncertainty) => 1 / uncertainty ** 2);
  const centre = weightedMean(temperatures, weights);
  const fit = leastSquares(
    temperatures.map((temperature) => [1, temperature - centre]),
    points.map(({ limit }) => limit),
    weights,
  );
  if (!fit.ok) return oneTemperature();
  const { coefficients, cofactors, degreesOfFreedom } = fit.value;
  const [limit = Number.NaN, slope = Number.NaN] = coefficients;
  const { birgeRatio, widening, effectiveDegreesOfFreedom, coverageFactor } = scatterOf(fit.value);
  const uncertainty = widening * Math.sqrt(cofactors[0]?.[0] ?? Number.NaN);
  const slopeUncertainty = widening * Math.sqrt(cofactors[1]?.[1] ?? Number.NaN);
  return success({
    slope,
    intercept: limit - slope * centre,
    slopeUncertainty,
    interceptUncertainty: Math.hypot(uncertainty, centre * slopeUncertainty),
    centre: { temperature: centre, limit, uncertainty },
    tested: { low: Math.min(...temperatures), high: Math.max(...temperatures) },
    residualDegreesOfFreedom: degreesOfFreedom,
    birgeRatio,
    isWidened: effectiveDegreesOfFreedom !== null,
    effectiveDegreesOfFreedom,
    coverageFactor,
  });
}

function oneTemperature() {
  return refusal(
    'oneTemperature',
    'A line takes limits at two nozzle temperatures at least',
    'Run a ladder at another temperature.',
  );
}

function weightedMean(values: readonly number[], weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const first = values[0] ?? Number.NaN;
  // About the first value, so that equal values have exactly that mean.
  return (
    first + values.reduce((sum, value, index) => sum + (weights[index] ?? 0) * (value - first), 0) / total
  );
}
