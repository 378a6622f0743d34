import { fileURLToPath } from 'node:url';
import { type ComparisonRequest, comparePairings } from '../../../src/decisions/compare/compare-pairings.ts';
import type { Comparison } from '../../../src/decisions/compare/comparison.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import type { Job, Machine } from '../../../src/registry/generated/documents.ts';
import type { Registry } from '../../../src/registry/registry.ts';

export const { registry: demo } = loadFolders([fileURLToPath(new URL('../../../profiles', import.meta.url))]);

const filament = 'ashgrove/stagecraft-pla';
export const steeple = { machine: 'tollwick/steeple', nozzle: 'hs-0.4', filament };
export const lantern = { machine: 'brackwater/lantern', nozzle: 'hs-0.4', filament };
export const skiff = { machine: 'ferrywright/skiff', nozzle: 'br-0.4', filament };

/** A comparison of the demo registry, on the mask rack by the rules of the workshop unless asked otherwise. */
export function compared(request: Partial<ComparisonRequest>, registry: Registry = demo): Comparison {
  const comparison = comparePairings(registry, {
    job: 'mask-rack',
    policy: 'workshop',
    pairings: [lantern, steeple],
    ...request,
  });
  if (!comparison.ok) throw new Error(comparison.error.message);
  return comparison.value;
}

/** The demo registry with other figures for a machine. */
export function withMachine(id: string, figures: Partial<Machine>): Registry {
  const profile = demo.machine.get(id)!;
  const changed = { ...profile, data: { ...profile.data, ...figures } };
  return { ...demo, machine: new Map(demo.machine).set(id, changed) };
}

/** The demo registry with other figures for a job. */
export function withJob(id: string, figures: Partial<Job>): Registry {
  const profile = demo.job.get(id)!;
  const changed = { ...profile, data: { ...profile.data, ...figures } };
  return { ...demo, job: new Map(demo.job).set(id, changed) };
}
