import { compareText } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Profile } from '../../registry/profile.ts';
import { oncePerRegistry } from '../../registry/registry.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A batch number belongs to one filament.',
  rationale:
    'Where trials of two filaments name one batch, one of them was probably copied, and its readings belong to the other filament.',
  source:
    'Common practice, no source: a maker gives each batch a number of its own; short ones are compared within one maker.',
  example: alike(
    'trial',
    { bad: '26-0001', good: '26-0003' },
    (batch) => `
batch: ${batch}`,
  ),
  *check(profile, { registry }) {
    const key = batchKey(profile);
    const other = key === '' ? undefined : earlierOfOther(batches(registry).get(key) ?? [], profile);
    if (other === undefined) return;
    const { batch = '', filament } = profile.data;
    yield {
      path: ['batch'],
      part: 'value',
      message: `The batch ${batch} is one of ${other.data.filament} in the trial "${other.id}", and of ${filament} here`,
      found: batch,
      allowed: `a batch of ${filament}`,
      help: 'Look at the label of the spool, and correct the batch or the filament of the trial that has it wrong. If two makers use the same number, acknowledge the finding.',
    };
  },
};

const batches = oncePerRegistry((registry) => groupedBy(registry.trial.values(), batchKey));

/** Fewer letters and digits make a number that several makers give: `A-1`, `07`, the month `2603` (common practice, no source). */
const leastSpecific = 6;

function batchKey({ data: { batch = '', filament } }: Profile<'trial'>): string {
  const key = batch.replace(/\s+/g, '').toLowerCase();
  const [maker = ''] = filament.split('/');
  const isSpecific = key.replace(/[^a-z0-9]/g, '').length >= leastSpecific;
  return key === '' || isSpecific ? key : `${maker}/${key}`;
}

/** The first trial of the batch by date, where that is one of another filament. */
function earlierOfOther(
  trials: readonly Profile<'trial'>[],
  { data: { filament } }: Profile<'trial'>,
): Profile<'trial'> | undefined {
  const [first] = trials.toSorted(
    (one, other) => compareText(one.data.date, other.data.date) || compareText(one.id, other.id),
  );
  return first?.data.filament === filament ? undefined : first;
}
