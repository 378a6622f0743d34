import { fileURLToPath } from 'node:url';
import { reduceTrial } from '../../../src/bench/reduce-trial.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import type { Filament, Machine, Policy } from '../../../src/registry/generated/documents.ts';
import type { Registry } from '../../../src/registry/registry.ts';
import type { Result } from '../../../src/result.ts';
import {
  deriveTables,
  type TableProblem,
  type TableRequest,
} from '../../../src/tables/derive/derive-tables.ts';
import type { SpeedTable } from '../../../src/tables/derive/speed-table.ts';
import { testDay } from '../../run-command.ts';

const { registry: sample } = loadFolders([
  fileURLToPath(new URL('../../fixtures/registry', import.meta.url)),
]);

export const pairing = { machine: 'plumstead/wren', filament: 'oakhollow/daisy-pla', policy: 'house' };

/** Figures of a pairing that a test replaces, all in canonical units. */
export interface PairingFigures {
  readonly machine?: Partial<Machine>;
  readonly filament?: Partial<Filament>;
  readonly policy?: Partial<Policy>;
}

/** The sample registry with other figures for its pairing. */
export function registryWith({ machine, filament, policy }: PairingFigures): Registry {
  return {
    ...sample,
    machine: replaced(sample.machine, pairing.machine, machine),
    filament: replaced(sample.filament, pairing.filament, filament),
    policy: replaced(sample.policy, pairing.policy, policy),
  };
}

export function policyOf(registry: Registry): Policy {
  return registry.policy.get(pairing.policy)!.data;
}

/** The table of the sample pairing with other figures. */
export function tableWith(figures: PairingFigures = {}, asked: Partial<TableRequest> = {}): SpeedTable {
  const table = derivedWith(figures, asked);
  if (!table.ok) throw new Error(table.error.message);
  return table.value;
}

/** The same, where it may be that no table can be derived. */
export function derivedWith(
  figures: PairingFigures,
  asked: Partial<TableRequest> = {},
): Result<SpeedTable, TableProblem> {
  return deriveTables(
    registryWith(figures),
    { ...pairing, ...asked },
    { today: testDay, reduce: sampleReduction },
  );
}

const reductions = new Map<string, ReturnType<typeof reduceTrial>>();

/** What the readings of a sample trial give; no figure that tests replace changes it. */
export function sampleReduction(_: Registry, trial: string): ReturnType<typeof reduceTrial> {
  const reduced = reductions.get(trial) ?? reduceTrial(sample, trial);
  reductions.set(trial, reduced);
  return reduced;
}

const assumed = <Value>(value: Value) => [{ value, basis: 'assumed', reason: 'Bench habit' } as const];

/** Figures that fill every column and condition of a table. */
export const fullFigures = {
  filament: {
    firstLayerNozzleTemperature: assumed(215),
    fan: assumed({ low: 0.4, high: 1 }),
    shortestLayerTime: assumed(5),
    fieldNotes: [{ date: '2026-02-12', what: 'Dust in the path', effect: 'A step was lost' }],
  },
  policy: {
    caps: { firstLayer: { speed: 40, acceleration: 1000, reason: 'Adhesion to the bed' } },
    fan: { firstLayer: 0, outerContour: 0.8, innerContour: 0.2 },
    retraction: { length: 0.8, speed: 40, reason: 'Bench habit' },
  },
} as const satisfies PairingFigures;

/** A melt flow limit as a filament states it, measured on the nozzle of the sample pairing. */
export function meltLimit(
  value: number,
  nozzleTemperature: number,
): NonNullable<Filament['meltFlow']>[number] {
  return {
    value,
    basis: 'measured',
    evidence: 'wren-daisy-pla-215',
    at: { machine: pairing.machine, nozzle: 'hs-0.6', nozzleTemperature, batch: '26-0001' },
  };
}

function replaced<Data extends object, Entry extends { readonly data: Data }>(
  profiles: ReadonlyMap<string, Entry>,
  id: string,
  figures: Partial<Data> = {},
): ReadonlyMap<string, Entry> {
  const profile = profiles.get(id)!;
  return new Map(profiles).set(id, { ...profile, data: { ...profile.data, ...figures } });
}
