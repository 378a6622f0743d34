import type { Registry } from '../../src/registry/registry.ts';
import { randomSource } from '../../src/statistics/random.ts';
import { contradictionSlips } from './contradiction-slips.ts';
import { copySlips } from './copy-slips.ts';
import { formSlips } from './form-slips.ts';
import { provenanceSlips } from './provenance-slips.ts';
import { quantitySlips } from './quantity-slips.ts';
import { readingSlips } from './reading-slips.ts';
import type { Slip } from './slip.ts';
import { type SlipKind, slipKindNames } from './slip-kinds.ts';

/** Every slip that can be planted into a registry, one at a time. */
export function plantedSlips(registry: Registry, seed: string): Slip[] {
  return registry.profiles.flatMap((profile) => {
    const random = randomSource(`${seed} ${profile.source.relativePath}`);
    return [
      ...quantitySlips(profile, random),
      ...contradictionSlips(profile),
      ...provenanceSlips(profile, registry, random),
      ...copySlips(profile, registry, random),
      ...readingSlips(profile, registry),
      ...formSlips(profile, random),
    ];
  });
}

/** As many of the slips as the limit allows, of each kind that is wanted, drawn without replacement. */
export function sampledSlips(
  slips: readonly Slip[],
  { limit, seed, kinds = slipKindNames }: { limit: number; seed: string; kinds?: readonly SlipKind[] },
): Slip[] {
  return kinds.flatMap((kind) => {
    const random = randomSource(`${seed} ${kind}`);
    return slips
      .filter((slip) => slip.kind === kind)
      .map((slip) => ({ slip, lot: random.uniform() }))
      .sort((a, b) => a.lot - b.lot)
      .slice(0, limit)
      .map(({ slip }) => slip);
  });
}
