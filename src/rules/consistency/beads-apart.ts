import type { Job } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** How far the bead of one feature may be from the middle of the others'. */
const factors = { layerHeight: 4, lineWidth: 3 };

export const rule: ProfileRule<'job'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['job'],
  severity: 'warning',
  statement: 'The features of a job are printed with beads of similar height and width.',
  rationale:
    'They all come out of one nozzle; a height or width that lost a digit changes the time and mass of the job.',
  source: `Common practice, no source: layers within a factor of ${factors.layerHeight}, widths within ${factors.lineWidth} of each other.`,
  formula: `m/${factors.layerHeight} <= h <= ${factors.layerHeight} m; m/${factors.lineWidth} <= w <= ${factors.lineWidth} m, m the median of the other features`,
  example: alike(
    'job',
    { bad: '0.03 mm', good: '0.3 mm' },
    (value) => `
features:
  outerContour: {pathLength: 14 m, meanSegment: 12 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}
  innerContour: {pathLength: 14 m, meanSegment: 12 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}
  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: ${value}, lineWidth: 0.66 mm}`,
  ),
  *check(profile) {
    for (const part of ['layerHeight', 'lineWidth'] as const) yield* furthest(profile.data, part);
  },
};

/** The feature that is furthest from the others, if it is too far. */
function* furthest({ features }: Job, part: 'layerHeight' | 'lineWidth'): Generator<Hit> {
  const beads = Object.entries(features).flatMap(([feature, path]) =>
    'lineWidth' in path && path[part] > 0 ? [{ feature, value: path[part] }] : [],
  );
  const judged = beads.flatMap((bead) => {
    const middle = lowerMedian(beads.filter((other) => other !== bead).map(({ value }) => value));
    return middle === null ? [] : [{ ...bead, middle, apart: Math.abs(Math.log(bead.value / middle)) }];
  });
  const [worst] = judged.toSorted((a, b) => b.apart - a.apart);
  if (worst === undefined || worst.apart <= Math.log(factors[part]) + 1e-9) return;
  yield {
    path: ['features', worst.feature, part],
    part: 'value',
    message: `${shown(worst.value, 'length')} for ${worst.feature} is far from the other features, ${shown(worst.middle, 'length')}`,
    found: shown(worst.value, 'length'),
    allowed: `${shown(worst.middle / factors[part], 'length')} to ${shown(worst.middle * factors[part], 'length')}`,
    help: 'Check the digits and the unit.',
  };
}

/** The middle value, of an even number the lower one; null of none. */
function lowerMedian(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.ceil(sorted.length / 2) - 1] ?? null;
}
