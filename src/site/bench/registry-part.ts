import { familiesOf } from '../../knowledge/families.ts';
import { trialIndex } from '../../knowledge/trial-index.ts';
import { additionsTo } from '../../registry/addition.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import { type Kind, kinds } from '../../registry/kind.ts';
import type { AnyProfile, Profile } from '../../registry/profile.ts';
import { asWritten, brokenKey, exists, oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { leavesOf } from '../../registry/shape.ts';

/** A file of the registry as the bench reads it. */
export interface PartFile {
  /** Path from the root of its registry. */
  readonly path: string;
  readonly text: string;
  /** Whether it belongs to the team's own registry, and not to one that this rests on. */
  readonly isOwn: boolean;
}

/** What the bench must have of the registry for a machine or a filament, so that it loads no more than it needs. */
export interface RegistryPart {
  readonly files: readonly PartFile[];
  /** `KIND ID` of what these name and the registry holds elsewhere. */
  readonly elsewhere: readonly string[];
}

/** Ladders of a family that are handed out: a forecast for any of its filaments rests on the nearest of them. */
const mostKin = 60;

/** What every bench needs: the families, the house rules and the jobs. */
export function commonPart(registry: Registry, isOwn: (path: string) => boolean): RegistryPart {
  return partOf(
    registry,
    [...registry.polymer.values(), ...registry.policy.values(), ...registry.job.values()],
    isOwn,
  );
}

/** A machine, what was run on it, and the filaments that were run there. */
export function machinePart(
  registry: Registry,
  machine: Profile<'machine'>,
  isOwn: (path: string) => boolean,
): RegistryPart {
  const trials = trialIndex(registry).byMachine.get(machine.id) ?? [];
  return partOf(registry, [...withRuns(registry, trials), ...sourcesOf(registry, machine), machine], isOwn);
}

/** A filament with what adds to it, and what was run with it. */
export function filamentPart(
  registry: Registry,
  filament: Profile<'filament'>,
  isOwn: (path: string) => boolean,
): RegistryPart {
  const own = trialIndex(registry).byFilament.get(filament.id) ?? [];
  const written = asWritten(registry, 'filament', filament.id) ?? filament;
  const additions = additionsTo(filament.id, registry.addition);
  const stating = [written, ...additions];
  return partOf(
    registry,
    [...withRuns(registry, own), ...stating.flatMap((profile) => sourcesOf(registry, profile)), ...stating],
    isOwn,
  );
}

/**
 * The first ladders of a family, in the order of their files, with what they were run with. They stand once for all filaments of the
 * family, of which there may be hundreds.
 */
export function familyPart(
  registry: Registry,
  family: Profile<'polymer'>,
  isOwn: (path: string) => boolean,
): RegistryPart {
  const ladders = laddersByFamily(registry).get(family.id) ?? [];
  return partOf(registry, withRuns(registry, ladders.slice(0, mostKin)), isOwn);
}

/** The family whose ladders a forecast for a filament may rest on; null where it is not known. */
export function familyOf({ data }: Profile<'filament'>, registry: Registry): string | null {
  return familiesOf(data, registry)[0]?.id ?? null;
}

const laddersByFamily = oncePerRegistry((registry) => {
  const byFamily = new Map<string, Profile<'trial'>[]>();
  for (const trial of registry.trial.values()) {
    const filament = registry.filament.get(trial.data.filament)?.data;
    const family = filament === undefined ? undefined : familiesOf(filament, registry)[0]?.id;
    if (trial.data.method !== 'flowLadder' || family === undefined) continue;
    const known = byFamily.get(family);
    if (known === undefined) byFamily.set(family, [trial]);
    else known.push(trial);
  }
  return byFamily;
});

/** Trials with the machines and filaments that they were run with. */
function withRuns(registry: Registry, trials: readonly Profile<'trial'>[]): AnyProfile[] {
  return trials.flatMap((trial) => {
    const { machine = '', filament } = trial.data;
    return [
      trial,
      registry.machine.get(machine) ?? [],
      asWritten(registry, 'filament', filament) ?? [],
    ].flat();
  });
}

function sourcesOf(registry: Registry, profile: AnyProfile): AnyProfile[] {
  return referencesOf(profile).flatMap(({ kind, id }) =>
    kind === 'source' ? (registry.source.get(id) ?? []) : [],
  );
}

function referencesOf({ kind, written }: AnyProfile): { readonly kind: Kind; readonly id: string }[] {
  return leavesOf('reference', shapes[kind], written).flatMap(({ shape: { to }, value }) =>
    to === 'nozzle' || typeof value !== 'string' ? [] : [{ kind: to, id: value }],
  );
}

/** The files of profiles with their sheets, each once, and what they name besides. */
function partOf(
  registry: Registry,
  profiles: readonly AnyProfile[],
  isOwn: (path: string) => boolean,
): RegistryPart {
  const all = kinds.flatMap((kind) => [
    ...new Map(profiles.flatMap((each) => (each.kind === kind ? [[each.id, each]] : []))).values(),
  ]);
  const present = new Set(all.map(({ kind, id }) => brokenKey(kind, id)));
  const named = all.flatMap(referencesOf).filter(({ kind, id }) => exists(registry, kind, id));
  const elsewhere = new Set(named.map(({ kind, id }) => brokenKey(kind, id)));
  return {
    files: all.flatMap(({ source, attachment }) => [
      { path: source.relativePath, text: source.text, isOwn: isOwn(source.path) },
      ...(attachment?.ok
        ? [{ path: attachment.source.relativePath, text: attachment.source.text, isOwn: isOwn(source.path) }]
        : []),
    ]),
    elsewhere: [...elsewhere].filter((key) => !present.has(key)).sort(),
  };
}
