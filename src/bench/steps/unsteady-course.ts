import type { SeriesNoise, SeriesStep } from './step-series.ts';

/** Standard deviations of the difference of two steps beyond which chance is no explanation. */
const furthest = 3.5;
/** As the draws of means weigh what is known of the scatter beforehand. */
const priorWeight = 4;

/**
 * The step whose readings are further below those before it, or behind it, than their scatter explains, where the course
 * says that they are not; null where the course may be as it is said to be. In a peaked course only a dip between two
 * higher steps contradicts.
 */
export function unsteadyStep(
  steps: readonly SeriesStep[],
  { usualScatter, resolution }: SeriesNoise,
  course: 'rising' | 'falling' | 'peaked',
): SeriesStep | null {
  const freedom = steps.reduce((sum, { count }) => sum + count - 1, priorWeight);
  const squares = steps.reduce((sum, step) => sum + step.squares, priorWeight * usualScatter ** 2);
  const variance = (step: SeriesStep) => squares / freedom / step.count + resolution(step) ** 2 / 12;
  const excess = (step: SeriesStep, others: readonly SeriesStep[]) =>
    Math.max(
      0,
      ...others.map((other) => (other.mean - step.mean) / Math.sqrt(variance(step) + variance(other))),
    );
  const found = steps.map((step, index) => {
    const before = excess(step, steps.slice(0, index));
    const after = excess(step, steps.slice(index + 1));
    if (course === 'peaked') return Math.min(before, after);
    return course === 'rising' ? before : after;
  });
  const worst = Math.max(...found);
  return worst > furthest ? (steps[found.indexOf(worst)] ?? null) : null;
}
