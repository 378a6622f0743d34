import { groupedBy } from '../registry/grouped-by.ts';
import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { oncePerRegistry } from '../registry/registry.ts';
import { median } from '../statistics/middle.ts';
import type { CubicMillimetresPerSecond } from '../units/canonical.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { trialLimit } from './trial-limit.ts';

/**
 * Median of the flow limits that the other trials of the same nozzle and polymer family give; null where fewer than
 * `fewest` of them can be reduced.
 */
export function siblingLimit(
  trial: Profile<'trial'>,
  context: EvidenceContext,
  fewest = 1,
): CubicMillimetresPerSecond | null {
  const limits = siblingsOf(trial, context.registry).flatMap(
    (other) => trialLimit(other, context)?.value ?? [],
  );
  return limits.length < fewest ? null : median(limits);
}

const families = oncePerRegistry((registry) =>
  groupedBy(registry.trial.values(), (trial) => familyKey(trial, registry)),
);

function familyKey({ data: { machine, nozzle, filament } }: Profile<'trial'>, registry: Registry): string {
  return [machine, nozzle, registry.filament.get(filament)?.data.polymer].join(' ');
}

function siblingsOf(trial: Profile<'trial'>, registry: Registry): Profile<'trial'>[] {
  const all = families(registry).get(familyKey(trial, registry)) ?? [];
  return all.filter(({ id }) => id !== trial.id);
}
