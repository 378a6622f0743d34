import { compareFindings, type Finding } from '../../registry/finding.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { placeHit } from '../../registry/read-profile.ts';
import { brokenKey, type Registry } from '../../registry/registry.ts';
import { changedRecordKeys } from './changed-record.ts';
import type { ProfileDiff } from './diff-profile.ts';

/** What is wrong with a change: versions that have not moved far enough, records that are not what they were. */
export function diffFindings(
  profiles: readonly ProfileDiff[],
  base: Registry,
  { registry }: LoadedRegistry,
  unreadable: ReadonlyMap<string, Finding>,
): Finding[] {
  return profiles.flatMap((diff) => findingsOf(diff, base, registry, unreadable)).sort(compareFindings);
}

function findingsOf(
  diff: ProfileDiff,
  base: Registry,
  head: Registry,
  unreadable: ReadonlyMap<string, Finding>,
): Finding[] {
  const { kind, id, status } = diff;
  if (status === 'unjudged') {
    const first = unreadable.get(brokenKey(kind, id));
    return first === undefined ? [] : [unjudged(diff, first)];
  }
  const now = head[kind].get(id);
  if (status !== 'changed' || now === undefined) return [];
  const earlier = kind === 'trial' ? base.trial.get(id) : undefined;
  const record = earlier !== undefined && now.kind === 'trial' ? changedRecordKeys(earlier, now) : [];
  return [
    ...(diff.isBumpEnough ? [] : [tooSmall(diff, now)]),
    ...(record.length === 0 ? [] : [changedRecord(record, now)]),
  ];
}

function unjudged({ kind, id }: ProfileDiff, first: Finding): Finding {
  return {
    ...first,
    rule: 'diff/unjudged',
    severity: 'error',
    message: `What has changed in the ${kind} "${id}" cannot be judged: ${first.message}`,
    source: null,
    help: 'Run `meltbounds check`, fix what it finds, and compare again.',
  };
}

function tooSmall(diff: ProfileDiff, head: AnyProfile): Finding {
  const { version, neededVersion } = diff;
  const now = version.head ?? '';
  const hit = {
    path: ['version'],
    part: 'value',
    message: `The version ${versionText(version)}, but ${reasonOf(diff)}`,
    found: now,
    allowed: `${neededVersion} or above`,
    help: `Write \`version: ${neededVersion}\`.`,
  } as const;
  return placeHit(hit, head.source, head.yaml, 'diff/version-too-small', 'error');
}

function versionText({ base, head }: ProfileDiff['version']): string {
  return base === head ? `is still ${head}` : `goes from ${base} to ${head}`;
}

function reasonOf({ bump, changes, slowsTables }: ProfileDiff): string {
  switch (bump) {
    case 'major':
      return slowsTables && changes.every((change) => change.bump !== 'major')
        ? 'tables that were made by the old one are faster than the new limits allow: a major change'
        : 'a limit went down, a least time went up, a range narrowed or something is gone, so that tables made by the old one are no longer safe: a major change';
    case 'minor':
      return 'a limit went up, or something was added or corrected that tables use: a minor change';
    case 'patch':
      return 'what the profile says has changed, though no number of a table: a patch';
    case null:
      return 'a version never goes back';
    default:
      return bump satisfies never;
  }
}

function changedRecord(keys: readonly string[], head: AnyProfile): Finding {
  const names = keys.map((key) => `\`${key}\``).join(', ');
  const hit = {
    path: keys.slice(0, 1),
    part: 'key',
    message: `The record of the trial "${head.id}" has changed: ${names}`,
    allowed: 'remarks: operator, notice, fieldNotes, acknowledged',
    help: 'Records are never changed: restore this one, and add what is right as a new trial with an id of its own.',
  } as const;
  return placeHit(hit, head.source, head.yaml, 'diff/record-changed', 'error');
}
