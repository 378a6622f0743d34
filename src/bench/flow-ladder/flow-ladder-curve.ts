import { quantile, sortedDraws } from '../../statistics/coverage-interval.ts';
import { rounded } from '../../units/rounded.ts';
import type { ReducedResult, ReductionCurve } from '../reduction.ts';
import type { WeighedPiece } from './flow-ladder-steps.ts';
import type { PossibleCurve } from './possible-curves.ts';

const gridIntervals = 80;

/** The plot of a ladder: deficit against commanded flow, over the tested range. */
export function ladderCurve(
  readings: readonly WeighedPiece[],
  curves: readonly PossibleCurve[],
  tolerance: number,
  { value, interval }: ReducedResult,
): ReductionCurve {
  const baseline = quantile(sortedDraws(curves.map((curve) => curve.baseline)), 0.5);
  const flows = readings.map((reading) => reading.flow);
  const lowest = Math.min(...flows);
  const spacing = (Math.max(...flows) - lowest) / gridIntervals;
  const deficits = new Float64Array(curves.length);
  const points = Array.from({ length: gridIntervals + 1 }, (_, index) => {
    const x = lowest + index * spacing;
    const logFlow = Math.log(x);
    for (let place = 0; place < curves.length; place++) {
      deficits[place] = curves[place]?.deficit(x, logFlow) ?? Number.NaN;
    }
    deficits.sort();
    const [low, middle, high] = [0.025, 0.5, 0.975].map((share) => decimals(quantile(deficits, share)));
    return { x: rounded(x), low: low ?? 0, middle: middle ?? 0, high: high ?? 0 };
  });
  return {
    x: { quantity: 'commandedFlow', dimension: 'volumeFlow' },
    y: { quantity: 'deficit', dimension: 'ratio' },
    readings: readings.map((reading) => ({ x: reading.flow, y: decimals(1 - reading.ratio / baseline) })),
    fit: points.map(({ x, middle }) => ({ x, y: middle })),
    band: points.map(({ x, low, high }) => ({ x, low, high })),
    threshold: tolerance,
    limits:
      interval.low === null || interval.high === null
        ? []
        : [{ value, low: interval.low, high: interval.high }],
  };
}

/** A share to a millionth; significant digits would keep the noise of a zero. */
function decimals(share: number): number {
  return Number(share.toFixed(6)) || 0;
}
