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
  /** Of the widened uncertainty; null stands for infinitely many. */
  readonly effectiveDegreesOfFreedom: number | null;
  /** From a widened standard uncertainty to the half-width of a 95 % interval. */
  readonly coverageFactor: number;
}

/**
 * Judges a fit whose weights are inverse squares of standard uncertainties. Values that scatter by more than those explain
 * widen the result by the Birge ratio √(χ²/ν) (R. T. Birge, Phys. Rev. 40 (1932) 207). Of that variance the part that
 * the uncertainties explain counts as known, the surplus as estimated with ν degrees of freedom, so that the coverage
 * factor is Student's for their effective number (Welch and Satterthwaite, JCGM 100:2008, formula G.2b). Values that agree
 * leave the result as it is: agreement by chance must not make it surer.
 */
export function scatterOf({
  residualSquares,
  degreesOfFreedom,
}: Pick<LinearFit, 'residualSquares' | 'degreesOfFreedom'>): Scatter {
  const birgeRatio = degreesOfFreedom === 0 ? null : Math.sqrt(residualSquares / degreesOfFreedom);
  if (birgeRatio === null || birgeRatio <= 1) {
    return { birgeRatio, widening: 1, effectiveDegreesOfFreedom: null, coverageFactor: normalFactor };
  }
  const surplusShare = 1 - 1 / birgeRatio ** 2;
  const effective = degreesOfFreedom / surplusShare ** 2;
  return {
    ...{ birgeRatio, widening: birgeRatio, effectiveDegreesOfFreedom: effective },
    coverageFactor: studentTQuantile(0.975, effective),
  };
}
