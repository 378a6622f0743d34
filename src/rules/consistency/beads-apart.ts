import type { Job } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import { nozzlesOf } from '../../registry/nozzle.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import type { Millimetres } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { beadBounds, isBeadUsual } from '../engine/bead-bounds.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** How far the bead of one feature may be from the middle of the others'. */
const factors = { layerHeight: 4, lineWidth: 3 };

export const rule: ProfileRule<'job'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['job'],
  severity: 'warning',
  statement:
    'The features of a job are printed with beads of similar height and width, which a nozzle of the registry can lay.',
  rationale:
    'They all come out of one nozzle; a height or width that lost a digit changes the time and mass of the job.',
  source: `Common practice, no source: layers within a factor of ${factors.layerHeight}, widths within ${factors.lineWidth} of each other; layers from a tenth of the bore to all of it, lines from 0.6 to 2.5 times it.`,
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
  *check(profile, { registry }) {
    const apart = (['layerHeight', 'lineWidth'] as const).flatMap((part) => [
      ...furthest(profile.data, part),
    ]);
    yield* apart;
    if (apart.length === 0) yield* forNoNozzle(profile.data, registry);
  },
};

/** What no nozzle of the registry can lay; where a trial prints the job, it is compared with the nozzle there. */
function* forNoNozzle(job: Job, registry: Registry): Generator<Hit> {
  const { bores, printed } = nozzlesAndPrints(registry);
  if (printed.has(job.id) || narrowerThanHigh(job)) return;
  const tried = bores.map((bore) => misfits(job, bore));
  const [misfit] = tried.toSorted((one, other) => one.length - other.length)[0] ?? [];
  if (misfit === undefined) return;
  const { feature, part, value, bore } = misfit;
  yield {
    path: ['features', feature, part],
    part: 'value',
    message: `${part === 'layerHeight' ? 'Layers' : 'Lines'} of ${shown(value, 'length')} do not suit a nozzle of ${shown(bore, 'length')}, and no other nozzle of the registry suits the job better`,
    found: shown(value, 'length'),
    allowed: shownRange(beadBounds(part, bore), 'length'),
    help: 'Check the digits and the unit. If the machine for this job has no profile yet, write one, or acknowledge the finding.',
  };
}

interface Misfit {
  readonly feature: string;
  readonly part: 'layerHeight' | 'lineWidth';
  readonly value: Millimetres;
  readonly bore: Millimetres;
}

function misfits({ features }: Job, bore: Millimetres): Misfit[] {
  return Object.entries(features).flatMap(([feature, path]) =>
    (['layerHeight', 'lineWidth'] as const).flatMap((part) =>
      'layerHeight' in path && path[part] > 0 && !isBeadUsual(part, path[part], bore)
        ? [{ feature, part, value: path[part], bore }]
        : [],
    ),
  );
}

/** Such beads are an error of their own. */
function narrowerThanHigh({ features }: Job): boolean {
  return Object.values(features).some((path) => 'layerHeight' in path && path.lineWidth < path.layerHeight);
}

const nozzlesAndPrints = oncePerRegistry((registry) => ({
  bores: [
    ...new Set(
      [...registry.machine.values()].flatMap(({ data }) =>
        nozzlesOf(data).map(({ nozzle }) => nozzle.diameter),
      ),
    ),
  ].filter((bore) => bore > 0),
  printed: new Set([...registry.trial.values()].flatMap(({ data: { job } }) => job ?? [])),
}));

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
