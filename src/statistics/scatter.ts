import type { LinearFit } from './least-squares.ts';
import { studentTQuantile } from './student-t.ts';

/** Half-width of a 95 % interval of a normal distribution in standard deviations, Φ⁻¹(0.975). */
export const normalFactor = 1.959963984540054;

/** How far values scatter about a fit, against the standard uncertainties that their weights stand for. */
interface Scatter {
  /** Scatter over what the uncertainties explain; null where the fit takes every degree of freedom. */
  readonly birgeRatio: number | null;
  /** Factor on the uncertainties that follow from the weights alone, at least 1. */
  readonly widening: number;
  /** Those with which the surplus of scatter is known; null where there is no surplus. */
  readonly effectiveDegreesOfFreedom: number | null;
  /** From a widened standard uncertainty to the half-width of a 95 % interval. */
  readonly coverageFactor: number;
}

/**
 * Share of the variance that the uncertainties explain above which scatter counts as a surplus. One that began at 1 would pass
 * over true scatter that a few values show too little of: four of them would hold the truth 91 times in 100 at twice the
 * stated scatter, and hold it 92 times so (no source; `npm run line-coverage`).
 */
const surplusFrom = 0.72;

/**
 * What stands for the second degree of freedom where a fit leaves one, of which nothing can be learnt about scatter: a value
 * whose scatter is 1.1 times the explained (common practice, no source: benches repeat a little worse than their intervals).
 */
export const priorScatter = { birgeRatio: 1.1, freedom: 2 };

/**
 * Judges a fit whose weights are inverse squares of standard uncertainties. Values that scatter by more than those explain
 * widen the result by the Birge ratio √(χ²/ν) (R. T. Birge, Phys. Rev. 40 (1932) 207). The variance that the uncertainties
 * explain counts as known. The surplus is the difference of an estimate s² and something known, so that its variance is that
 * of the estimate, 2s⁴/ν, and it has ν degrees of freedom, however small it is: the half-width of the interval is the normal
 * factor and, in quadrature, Student's for ν times the root of the surplus. With one degree of freedom a stated prior stands
 * for a second. Values that agree leave the result as it is: agreement by chance must not make it surer.
 */
export function scatterOf({
  residualSquares,
  degreesOfFreedom,
}: Pick<LinearFit, 'residualSquares' | 'degreesOfFreedom'>): Scatter {
  if (degreesOfFreedom === 0) return { birgeRatio: null, ...agreeing };
  const birgeRatio = Math.sqrt(residualSquares / degreesOfFreedom);
  const missing = Math.max(0, priorScatter.freedom - degreesOfFreedom);
  const freedom = degreesOfFreedom + missing;
  const surplus = (residualSquares + missing * priorScatter.birgeRatio ** 2) / freedom - surplusFrom;
  if (surplus <= 0) return { birgeRatio, ...agreeing };
  const widening = Math.max(1, birgeRatio);
  const half = Math.hypot(normalFactor, studentTQuantile(0.975, freedom) * Math.sqrt(surplus));
  return { birgeRatio, widening, effectiveDegreesOfFreedom: freedom, coverageFactor: half / widening };
}

const agreeing = { widening: 1, effectiveDegreesOfFreedom: null, coverageFactor: normalFactor };
