import { finds, resultOf } from '../bench/methods.ts';
import type { ReduceById } from '../bench/reducing-once.ts';
import type { ReducedResult } from '../bench/reduction.ts';
import { familiesOf } from '../knowledge/families.ts';
import type { FittedPairing } from '../knowledge/pairing.ts';
import { compareText } from '../registry/finding.ts';
import type { Filament } from '../registry/generated/documents.ts';
import { findNozzle } from '../registry/nozzle.ts';
import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius } from '../units/canonical.ts';
import { type MeltSetup, scaling } from './melt-setup.ts';

/** How near a trial is to a pairing, the nearest first. */
const kinships = ['samePairing', 'otherNozzle', 'otherGrade', 'otherMachine', 'distant'] as const;

type Kinship = (typeof kinships)[number];

/** What a kinship means, in words. */
export const kinshipText: Readonly<Record<Kinship, string>> = {
  samePairing: 'the same pairing',
  otherNozzle: 'the same machine and filament with another nozzle',
  otherGrade: 'the same machine with another filament of the family',
  otherMachine: 'the same filament on another machine',
  distant: 'another filament of the family on another machine',
};

/** Factor within which the scaled limit of a trial is thought to hold, up and down (common practice, no source). */
const usualSpread: Readonly<Record<Kinship, number>> = {
  samePairing: 1.1,
  otherNozzle: 1.25,
  otherGrade: 1.4,
  otherMachine: 1.35,
  distant: 1.6,
};

/** On top of it where one filament is filled and the other is not (common practice, no source). */
const fillerSpread = 1.2;

/** A ladder that tells something about a pairing. */
export interface SiblingTrial {
  readonly id: string;
  readonly kinship: Kinship;
  readonly machine: string;
  readonly nozzle: string;
  readonly filament: string;
  readonly nozzleTemperature: DegreesCelsius;
  /** What its readings give. */
  readonly limit: ReducedResult;
  /** Its limit scaled to the pairing. */
  readonly scaled: CubicMillimetresPerSecond;
  /** The limit of the pairing is thought to lie within this factor of it. */
  readonly spread: number;
}

/** The flow ladders of a registry with the filament or the family of a pairing, the nearest first. */
export function siblingTrials(
  registry: Registry,
  pairing: FittedPairing,
  setup: MeltSetup,
  reduce: ReduceById,
): SiblingTrial[] {
  return [...registry.trial.values()]
    .flatMap((trial) => sibling(registry, pairing, setup, trial, reduce) ?? [])
    .sort(
      (a, b) =>
        kinships.indexOf(a.kinship) - kinships.indexOf(b.kinship) ||
        a.spread - b.spread ||
        compareText(a.id, b.id),
    );
}

function sibling(
  registry: Registry,
  pairing: FittedPairing,
  setup: MeltSetup,
  { id, data }: Profile<'trial'>,
  reduce: ReduceById,
): SiblingTrial | null {
  if (!finds(data.method, 'meltFlow')) return null;
  const { machine: machineId, nozzle, conditions } = data;
  const { nozzleTemperature } = conditions;
  if (machineId === undefined || nozzle === undefined || nozzleTemperature === undefined) return null;
  const filament = registry.filament.get(data.filament)?.data;
  const machine = registry.machine.get(machineId)?.data;
  const fitted = machine === undefined ? null : findNozzle(machine, nozzle);
  if (filament === undefined || fitted === null) return null;
  const families = familiesOf(filament, registry);
  const kinship = kinshipOf(
    { machine: machineId, nozzle, filament: filament.id },
    pairing,
    families[0]?.id === setup.families[0]?.id,
  );
  const scale = kinship && scaling({ ...fitted, filament, families, nozzleTemperature }, setup);
  if (kinship === null || scale === null) return null;
  const reduced = reduce(id);
  const limit = reduced.ok ? resultOf(reduced.value, 'meltFlow') : undefined;
  if (limit === undefined) return null;
  return {
    id,
    kinship,
    machine: machineId,
    nozzle,
    filament: data.filament,
    nozzleTemperature,
    limit,
    scaled: limit.value * scale.factor,
    spread: usualSpread[kinship] * scale.spread * (alikeFilled(filament, setup.filament) ? 1 : fillerSpread),
  };
}

function kinshipOf(
  trial: { readonly machine: string; readonly nozzle: string; readonly filament: string },
  { machine, nozzle, filament }: FittedPairing,
  sameFamily: boolean,
): Kinship | null {
  const sameMachine = trial.machine === machine.id;
  if (trial.filament === filament.id) {
    if (!sameMachine) return 'otherMachine';
    return trial.nozzle === nozzle.id ? 'samePairing' : 'otherNozzle';
  }
  if (!sameFamily) return null;
  return sameMachine ? 'otherGrade' : 'distant';
}

function alikeFilled(a: Filament, b: Filament | null): boolean {
  return (a.fillers === undefined) === (b?.fillers === undefined);
}
