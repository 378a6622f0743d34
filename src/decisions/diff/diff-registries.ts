import { type Origin, originOf } from '../../knowledge/origin.ts';
import { additionsTo } from '../../registry/addition.ts';
import { compareText, type Finding } from '../../registry/finding.ts';
import { type Kind, kinds } from '../../registry/kind.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { asWritten, brokenKey, type Registry } from '../../registry/registry.ts';
import { statementsOf } from '../../registry/statement.ts';
import { diffFindings } from './diff-findings.ts';
import {
  diffProfile,
  type ProfileDiff,
  type TablesEffect,
  unpairedProfile,
  versionOf,
} from './diff-profile.ts';
import { diffTables, hasFallen, hasMoved, type TablesDiff, withProfile } from './diff-tables.ts';
import { type Bump, highestBump } from './profile-bump.ts';
import type { SimulatedTrials } from './profile-changes.ts';
import { isSameValue } from './same-value.ts';
import type { TableName } from './table-name.ts';
import { unreadableKeys } from './unreadable-keys.ts';

/** What a change of a registry means. */
export interface RegistryDiff {
  /** What differs, in the order of the kinds and ids. */
  readonly profiles: readonly ProfileDiff[];
  readonly tables: TablesDiff;
  /** The highest bump of all profiles; null where nothing differs. */
  readonly bump: Bump | null;
  /** What of the profiles that differ is not real. */
  readonly origin: Origin;
  readonly findings: readonly Finding[];
}

/** Compares two versions of a registry. What cannot be read on a side is named and not judged. */
export function diffRegistries(base: LoadedRegistry, head: LoadedRegistry): RegistryDiff {
  const unreadable = { base: unreadableKeys(base), head: unreadableKeys(head) };
  const isUnjudged = (key: string) => unreadable.base.has(key) || unreadable.head.has(key);
  const [before, after] = [base.registry, head.registry];
  const simulated = { base: simulatedTrials(before), head: simulatedTrials(after) };
  const profiles: ProfileDiff[] = [];
  for (const kind of kinds) {
    for (const id of idsOfBoth(base, head, kind)) {
      const [old, now] = [asWritten(before, kind, id), asWritten(after, kind, id)];
      const version = { base: versionIn(old), head: versionIn(now) };
      const key = brokenKey(kind, id);
      if (!isUnjudged(key)) profiles.push(...judged(before, old, now, simulated));
      else if (!isSameText(before, after, key))
        profiles.push(unpairedProfile('unjudged', { kind, id }, version));
    }
  }
  const touched = new Set(profiles.map((profile) => brokenKey(profile.kind, profile.id)));
  const findings = diffFindings(profiles, before, head, unreadable.head);
  return {
    profiles,
    tables: diffTables(before, after, (name) => touches(touched, name, [before, after])),
    bump: highestBump(profiles.map(({ bump }) => bump)),
    origin: originOfDiff(after, profiles),
    findings,
  };
}

function judged(
  base: Registry,
  old: AnyProfile | undefined,
  now: AnyProfile | undefined,
  simulated: SimulatedTrials,
): ProfileDiff[] {
  if (old === undefined) return now === undefined ? [] : [lonely('added', now)];
  if (now === undefined) return [lonely('removed', old)];
  if (isSameValue(old.data, now.data) && sheetOf(old) === sheetOf(now)) return [];
  const diff = diffProfile(old, now, effectOnTables(base, now), simulated);
  return diff === null ? [] : [diff];
}

/** What is not real among the profiles that differ, and among the trials that their statements rest on. */
function originOfDiff(after: Registry, profiles: readonly ProfileDiff[]): Origin {
  const trials = profiles.flatMap(({ kind, id }) => {
    if (kind === 'trial') return [id];
    const profile = asWritten(after, kind, id);
    return profile === undefined
      ? []
      : [...statementsOf(profile)].flatMap(({ statement }) => statement.evidence ?? []);
  });
  return originOf(after, { profiles, trials });
}

function simulatedTrials({ trial }: Registry): ReadonlySet<string> {
  return new Set([...trial.values()].filter(({ data }) => data.origin === 'simulated').map(({ id }) => id));
}

function lonely(status: 'added' | 'removed', profile: AnyProfile): ProfileDiff {
  const version = versionOf(profile);
  const isAdded = status === 'added';
  return unpairedProfile(status, profile, {
    base: isAdded ? null : version,
    head: isAdded ? version : null,
  });
}

function sheetOf({ attachment }: AnyProfile): string | null {
  return attachment?.ok ? attachment.source.digest : null;
}

function versionIn(profile: AnyProfile | undefined): string | null {
  return profile === undefined ? null : versionOf(profile);
}

function idsOfBoth(base: LoadedRegistry, head: LoadedRegistry, kind: Kind): string[] {
  const start = `${kind} `;
  const keys = [base, head].flatMap(({ registry }) => [
    ...registry.documents.filter((document) => document.kind === kind).map(({ id }) => id),
    ...[...registry.broken].filter((key) => key.startsWith(start)).map((key) => key.slice(start.length)),
  ]);
  return [...new Set(keys)].sort(compareText);
}

/** Whether a document is the same on both sides, so that nothing about it needs to be judged. */
function isSameText(base: Registry, head: Registry, key: string): boolean {
  const [before, after] = [base, head].map(({ documents }) =>
    documents.find(({ kind, id }) => brokenKey(kind, id) === key),
  );
  return before !== undefined && before.source.digest === after?.source.digest;
}

/** What would become of the tables if nothing but this profile had changed. */
function effectOnTables(base: Registry, profile: AnyProfile): TablesEffect {
  const changed = withProfile(base, profile);
  if (changed === base) return 'none';
  const touched = new Set([brokenKey(profile.kind, profile.id)]);
  const tables = diffTables(base, changed, (name) => touches(touched, name, [base]));
  if (hasFallen(tables)) return 'slower';
  return hasMoved(tables) ? 'moved' : 'none';
}

/** Whether a table rests on one of some documents. */
function touches(
  touched: ReadonlySet<string>,
  { machine, filament, policy }: TableName,
  registries: readonly Registry[],
): boolean {
  const polymers = registries.flatMap(
    ({ filament: filaments }) => filaments.get(filament)?.data.polymer ?? [],
  );
  const additions = registries.flatMap(({ addition }) => additionsTo(filament, addition));
  return [
    ...additions.map(({ id }) => brokenKey('addition', id)),
    brokenKey('machine', machine),
    brokenKey('filament', filament),
    brokenKey('policy', policy),
    ...polymers.map((polymer) => brokenKey('polymer', polymer)),
  ].some((key) => touched.has(key));
}
