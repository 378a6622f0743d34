import { acknowledgementsOf, isLive } from '../evidence/acknowledgement.ts';
import type { FittedPairing } from '../knowledge/pairing.ts';
import { trialIndex, trialsOfPairing } from '../knowledge/trial-index.ts';
import { additionsTo } from '../registry/addition.ts';
import { shapes } from '../registry/generated/shapes.ts';
import type { Kind } from '../registry/kind.ts';
import { findNozzle } from '../registry/nozzle.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import { asWritten, brokenKey, oncePerRegistry, type Registry } from '../registry/registry.ts';
import { leavesOf } from '../registry/shape.ts';
import type { FullRequest } from '../tables/derive/every-pairing.ts';

/**
 * All that the pages of trials and pairings are made of, as lists of files with their digests. A list may hold too much, which
 * costs time; what it lacks would leave an old page. `tests/site/unit-inputs.test.ts` watches what the makers of pages read.
 */
interface UnitInputs {
  readonly ofTrial: (trial: Profile<'trial'>) => readonly string[];
  readonly ofPairing: (request: FullRequest) => readonly string[];
}

/** `today` decides which acknowledgements still count, YYYY-MM-DD. */
export function unitInputs(registry: Registry, today: string): UnitInputs {
  const own = (kind: Kind, id: string) => digestOf(registry, kind, id, today);
  const withReferences = (profiles: readonly AnyProfile[]) =>
    profiles.flatMap((profile) => [
      own(profile.kind, profile.id),
      ...referencesOf(profile).map(({ kind, id }) => own(kind, id)),
      ...(profile.kind === 'filament' ? additionsOf(profile.id) : []),
    ]);
  const additionsOf = (filament: string): string[] =>
    withReferences(additionsTo(filament, registry.addition));
  const common = sorted(withReferences([...registry.polymer.values()])).join(' ');
  const ofTrial = (trial: Profile<'trial'>) => {
    const { machine = '', filament, job = '' } = trial.data;
    const named = [
      registry.machine.get(machine) ?? [],
      asWritten(registry, 'filament', filament) ?? [],
      registry.job.get(job) ?? [],
    ].flat();
    return [common, ...sorted(withReferences([trial, ...named]))];
  };
  return {
    ofTrial,
    ofPairing: ({ machine, nozzle, filament, policy }) => {
      const stating = [
        registry.machine.get(machine) ?? [],
        asWritten(registry, 'filament', filament) ?? [],
        additionsTo(filament, registry.addition),
        registry.policy.get(policy) ?? [],
      ].flat();
      const fitted = fittedOf(registry, { machine, nozzle, filament });
      const run = fitted === null ? [] : trialsOfPairing(registry, fitted);
      const shown = stating
        .flatMap(referencesOf)
        .flatMap(({ kind, id }) => (kind === 'trial' ? (registry.trial.get(id) ?? []) : []));
      // By the prints of a machine the time of jobs is judged.
      const prints = (trialIndex(registry).byMachine.get(machine) ?? []).filter(
        ({ data }) => data.method === 'referencePrint',
      );
      const trials = [...run, ...shown, ...prints];
      return [common, ...sorted([...withReferences(stating), ...trials.flatMap(ofTrial)])];
    },
  };
}

/** A pairing by its ids; null where the registry does not hold it. */
export function fittedOf(registry: Registry, asked: Omit<FullRequest, 'policy'>): FittedPairing | null {
  const machine = registry.machine.get(asked.machine);
  const filament = registry.filament.get(asked.filament);
  const fitted = machine === undefined ? null : findNozzle(machine.data, asked.nozzle);
  return machine === undefined || filament === undefined || fitted === null
    ? null
    : { machine, filament, ...fitted };
}

function sorted(digests: readonly string[]): string[] {
  return [...new Set(digests)].sort();
}

const digests = oncePerRegistry(() => new Map<string, string>());

/** A profile as its file has it: where the file is, what it and its sheet hold, and which of its acknowledgements count. */
function digestOf(registry: Registry, kind: Kind, id: string, today: string): string {
  const key = `${today} ${brokenKey(kind, id)}`;
  const known = digests(registry).get(key) ?? newDigest(registry, kind, id, today);
  digests(registry).set(key, known);
  return known;
}

function newDigest(registry: Registry, kind: Kind, id: string, today: string): string {
  const profile = asWritten(registry, kind, id);
  const name = brokenKey(kind, id);
  if (profile === undefined) return `${name} ${registry.broken.has(name) ? 'broken' : 'none'}`;
  const { source, attachment } = profile;
  const sheet = attachment === null ? '' : attachment.ok ? attachment.source.digest : 'none';
  const live = acknowledgementsOf(profile).map((entry) => (isLive(entry, today) ? '1' : '0'));
  return [name, source.path, source.digest, sheet, live.join('')].join(' ');
}

interface Reference {
  readonly kind: Kind;
  readonly id: string;
}

function referencesOf({ kind, written }: AnyProfile): readonly Reference[] {
  return leavesOf('reference', shapes[kind], written).flatMap(({ shape: { to }, value }) =>
    to === 'nozzle' || typeof value !== 'string' ? [] : [{ kind: to, id: value }],
  );
}
