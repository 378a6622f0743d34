import { type SeriesNoise, type SeriesStep, stepVariances } from './step-series.ts';

/** Standard deviations of the difference of two steps beyond which chance is no explanation. */
const furthest = 3.5;

/**
 * The step whose readings are further below those before it, or behind it, than their scatter explains, where the course
 * says that they are not; null where the course may be as it is said to be. In a peaked course only a dip between two
 * higher steps contradicts.
 */
export function unsteadyStep(
  steps: readonly SeriesStep[],
  noise: SeriesNoise,
  course: 'rising' | 'falling' | 'peaked',
): SeriesStep | null {
  const variances = stepVariances(steps, noise);
  const excess = (place: number, from: number, to: number) => {
    const own = steps[place];
    const excesses = steps.slice(from, to).map(({ mean }, index) => {
      const variance = (variances[place] ?? 0) + (variances[from + index] ?? 0);
      return (mean - (own?.mean ?? 0)) / Math.sqrt(variance);
    });
    return Math.max(0, ...excesses);
  };
  const found = steps.map((_, index) => {
    const before = excess(index, 0, index);
    const after = excess(index, index + 1, steps.length);
    if (course === 'peaked') return Math.min(before, after);
    return course === 'rising' ? before : after;
  });
  const worst = Math.max(...found);
  return worst > furthest ? (steps[found.indexOf(worst)] ?? null) : null;
}
