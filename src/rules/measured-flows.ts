import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { CubicMillimetresPerSecond } from '../units/canonical.ts';
import { groupedBy } from './grouped-by.ts';
import { oncePerRegistry } from './once-per-registry.ts';
import { type Stated, stated } from './stated.ts';

/** A measured flow limit of a filament on a machine and nozzle. */
export interface MeasuredFlow extends Stated<CubicMillimetresPerSecond> {
  readonly polymer: string;
  /** Machine and nozzle in one text. */
  readonly hotEnd: string;
}

const byHotEndAndFamily = oncePerRegistry((registry) =>
  groupedBy([...registry.filament.values()].flatMap(measuredFlows), siblingKey),
);

/** The measured flow limits of one filament whose machine and nozzle are named. */
export function measuredFlows({ data }: Profile<'filament'>): MeasuredFlow[] {
  return stated(data.meltFlow, ['meltFlow']).flatMap((limit) => {
    const { machine, nozzle } = limit.statement.at ?? {};
    if (limit.statement.basis !== 'measured' || machine === undefined || nozzle === undefined) return [];
    return [{ ...limit, polymer: data.polymer, hotEnd: `${machine} ${nozzle}` }];
  });
}

/** The other measured flows of the same machine, nozzle and polymer family. */
export function siblingsOf(flow: MeasuredFlow, registry: Registry): MeasuredFlow[] {
  const all = byHotEndAndFamily(registry).get(siblingKey(flow)) ?? [];
  return all.filter(({ statement }) => statement !== flow.statement);
}

function siblingKey({ hotEnd, polymer }: MeasuredFlow): string {
  return `${hotEnd} ${polymer}`;
}
