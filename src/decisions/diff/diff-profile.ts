import type { Kind } from '../../registry/kind.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { type Bump, bumpedVersion, highestBump, isBumpEnough } from './profile-bump.ts';
import { type ProfileChange, profileChanges, type SimulatedTrials } from './profile-changes.ts';

/** What has become of a document between two versions of a registry. */
export interface ProfileDiff {
  readonly kind: Kind;
  readonly id: string;
  /** `unjudged`: its file cannot be read or does not fit its schema on one of the sides. */
  readonly status: 'added' | 'removed' | 'changed' | 'unjudged';
  /** Versions of the profile; null where there is none. */
  readonly version: { readonly base: string | null; readonly head: string | null };
  /** The bump that the change needs: of this profile if it is still there, else of whatever holds it. */
  readonly bump: Bump | null;
  /** The lowest version that would do; null where nothing asks for one. */
  readonly neededVersion: string | null;
  readonly isBumpEnough: boolean;
  /** Whether tables of pairings with this profile would be slower by it alone than they were. */
  readonly slowsTables: boolean;
  readonly changes: readonly ProfileChange[];
}

/** What a profile alone does to tables: some are slower or gone, some say something else, or none does. */
export type TablesEffect = 'slower' | 'moved' | 'none';

const bumpOfEffect: Readonly<Record<TablesEffect, Bump | null>> = {
  slower: 'major',
  moved: 'minor',
  none: null,
};

/** Compares two versions of a profile; null where both say the same, in whatever spelling. */
export function diffProfile(
  base: AnyProfile,
  head: AnyProfile,
  effect: TablesEffect,
  simulated: SimulatedTrials,
): ProfileDiff | null {
  const changes = profileChanges(base, head, simulated);
  const version = { base: versionOf(base), head: versionOf(head) };
  if (changes.length === 0 && version.base === version.head) return null;
  const bump = highestBump([bumpOfEffect[effect], ...changes.map((change) => change.bump)]);
  const { base: old, head: now } = version;
  return {
    kind: head.kind,
    id: head.id,
    status: 'changed',
    version,
    // A record has no version: what is wrong with changing it is said elsewhere.
    bump: old === null ? 'patch' : bump,
    neededVersion: old === null || bump === null ? old : bumpedVersion(old, bump),
    isBumpEnough: old === null || now === null || isBumpEnough(old, now, bump),
    slowsTables: effect === 'slower',
    changes,
  };
}

/** A document that only one side has, or that cannot be judged. */
export function unpairedProfile(
  status: 'added' | 'removed' | 'unjudged',
  { kind, id }: { readonly kind: Kind; readonly id: string },
  version: ProfileDiff['version'],
): ProfileDiff {
  const bump = status === 'unjudged' ? null : status === 'added' ? 'minor' : 'major';
  const rest = { neededVersion: null, isBumpEnough: true, slowsTables: false, changes: [] };
  return { kind, id, status, version, bump, ...rest };
}

/** Version of a profile; records have none. */
export function versionOf({ data }: AnyProfile): string | null {
  return 'version' in data ? data.version : null;
}
