import semver from 'semver';

/**
 * Version bumps of a profile from the highest. Major: tables made by the old profile are no longer safe. Minor: they
 * are, but new ones allow more or hold more. Patch: no number that a table uses.
 */
const bumps = ['major', 'minor', 'patch'] as const;

export type Bump = (typeof bumps)[number];

/** The highest of several bumps; null for none. */
export function highestBump(given: readonly (Bump | null)[]): Bump | null {
  return bumps.find((bump) => given.includes(bump)) ?? null;
}

/** The lowest version that a bump leads to: 1.4.2 with a minor bump is 1.5.0. */
export function bumpedVersion(version: string, bump: Bump): string {
  const bumped = semver.inc(version, bump);
  if (bumped === null) throw new Error(`the schema let the version "${version}" pass`);
  return bumped;
}

/** Whether the version of a profile has moved far enough for a bump; further is fine, back never is. */
export function isBumpEnough(base: string, head: string, needed: Bump | null): boolean {
  return semver.gte(head, needed === null ? base : bumpedVersion(base, needed));
}
