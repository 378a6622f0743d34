import { rounded } from '../../units/rounded.ts';
import type { ReducedResult } from '../reduction.ts';
import type { FlowLadderSettings } from './flow-ladder-settings.ts';
import type { LadderStep } from './flow-ladder-steps.ts';

/** What a diameter is off by at most, mm, and a density as a share (common practice, no source). */
const diameterError = 0.05;
const densityError = 0.02;

/** The steps that show what comes out where nothing should be missing. */
const lowest = 2;

/**
 * What is missing at the lowest steps against the nominal mass, as a share, with the interval that diameter, density and
 * scale leave: the limit counts from these steps, so that this much is missing at every step besides.
 */
export function startDeficit(steps: readonly LadderStep[], settings: FlowLadderSettings): ReducedResult {
  const start = steps.slice(0, lowest);
  const count = start.reduce((sum, step) => sum + step.count, 0);
  const logRatio = start.reduce((sum, step) => sum + step.count * step.meanLogRatio, 0) / count;
  const ratio = Math.exp(logRatio);
  const half = startDoubt(steps, settings) * ratio;
  return {
    quantity: 'startDeficit',
    dimension: 'ratio',
    value: share(1 - ratio),
    interval: { low: share(1 - ratio - half), high: share(1 - ratio + half), coverage: 0.95 },
    censored: null,
  };
}

/** What diameter, density and scale can explain of the share that comes out at the lowest steps, as a part of it. */
export function startDoubt(steps: readonly LadderStep[], { filamentDiameter }: FlowLadderSettings): number {
  const diameter = (2 * diameterError) / filamentDiameter;
  return Math.hypot(diameter, densityError, (steps[0]?.relativeResolution ?? 0) / 2);
}

/** To a ten-thousandth: significant digits would keep the noise of a zero. */
function share(value: number): number {
  return rounded(Number(value.toFixed(4))) || 0;
}
