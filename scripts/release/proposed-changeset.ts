import type { ProfileDiff } from '../../src/decisions/diff/diff-profile.ts';
import type { RegistryDiff } from '../../src/decisions/diff/diff-registries.ts';
import { type Bump, highestBump } from '../../src/decisions/diff/profile-bump.ts';
import type { ProfileChange } from '../../src/decisions/diff/profile-changes.ts';
import { changeName, sideText } from '../../src/report/diff/change-text.ts';
import { tellingChanges } from '../../src/report/diff/diff-digest.ts';
import { slowerTables } from '../../src/report/diff/diff-document.ts';
import { majorMark } from './changelog-groups.ts';
import { beforeFirstStable } from './release-version.ts';
import type { SchemaDiff } from './schema-diff.ts';

/** What has changed in the package since its last release, as far as files show it. */
export interface PackageChange {
  readonly profiles: RegistryDiff['profiles'];
  readonly schema: SchemaDiff;
  /** Codes of rules that are new, or gone. */
  readonly rules: { readonly added: readonly string[]; readonly removed: readonly string[] };
}

/** Values of a profile that are named; the rest is counted. */
const mostValues = 4;

/** Profiles of a sort that are named; the rest is counted. */
const mostProfiles = 12;

interface Proposal {
  readonly bump: Bump;
  readonly text: string;
}

/**
 * A changeset for a change of the package of a version, or null where no file that it looks at has changed. Major: the shape, an id
 * that is gone, or values by which old tables are no longer safe, such as a limit that goes down. Minor: new entries, fields and
 * rules. Patch: other corrected values. Before 1.0.0 a minor version may hold major changes, which say so.
 */
export function proposedChangeset(change: PackageChange, version: string): string | null {
  const proposals = [
    ...profileProposals(change.profiles),
    ...schemaProposals(change),
    ...ruleProposals(change),
  ];
  const bump = highestBump(proposals.map((proposal) => proposal.bump));
  if (bump === null) return null;
  const texts = proposals.map(({ text }) => text).join('\n\n');
  return beforeFirstStable(`---\n"meltbounds": ${bump}\n---\n\n${texts}\n`, version);
}

function profileProposals(profiles: readonly ProfileDiff[]): Proposal[] {
  const of = (status: ProfileDiff['status']) => profiles.filter((profile) => profile.status === status);
  const lessSafe = of('changed').filter((profile) => profile.bump === 'major');
  const corrected = of('changed').filter((profile) => profile.bump !== 'major');
  return [
    ...proposal('minor', 'Added', of('added').map(nameOf), ', '),
    ...lessSafe.map((profile) => lessSafeProposal(profile)),
    ...proposal('patch', 'Corrected values', corrected.map(correctionOf), '; '),
    ...proposal('major', 'Removed', of('removed').map(nameOf), ', '),
  ];
}

/** Values by which old tables are no longer safe, with the warning that `diff` prints. */
function lessSafeProposal(profile: ProfileDiff): Proposal {
  const warning = profile.slowsTables ? slowerTables : 'Tables made by the old version are no longer safe.';
  return { bump: 'major', text: `Corrected values: ${majorMark}${correctionOf(profile)}. ${warning}` };
}

function proposal(bump: Bump, group: string, texts: readonly string[], separator: string): Proposal[] {
  if (texts.length === 0) return [];
  const hidden = texts.length - mostProfiles;
  const shown = [...texts.slice(0, mostProfiles), ...(hidden > 0 ? [`and ${hidden} more`] : [])];
  return [{ bump, text: `${group}: ${bump === 'major' ? majorMark : ''}${shown.join(separator)}.` }];
}

function nameOf({ kind, id, version }: ProfileDiff): string {
  const number = version.head ?? version.base;
  return `${kind} ${id}${number === null ? '' : ` ${number}`}`;
}

function correctionOf(profile: ProfileDiff): string {
  const { shown, hidden } = tellingChanges(profile, mostValues);
  const values = [...shown.map(valueText), ...(hidden > 0 ? [`and ${hidden} more`] : [])];
  return values.length === 0 ? nameOf(profile) : `${nameOf(profile)} (${values.join(', ')})`;
}

function valueText(change: ProfileChange): string {
  const { base, head, dimension } = change;
  return `${changeName(change)} ${sideText(base, dimension)} → ${sideText(head, dimension)}`;
}

function schemaProposals({ schema }: PackageChange): Proposal[] {
  return [
    ...proposal('major', 'Schema', schema.breaking, ', '),
    ...proposal(
      'minor',
      'Schema',
      schema.added.map((place) => `new ${place}`),
      ', ',
    ),
  ];
}

function ruleProposals({ rules }: PackageChange): Proposal[] {
  const code = (name: string) => `\`${name}\``;
  return [
    ...proposal(
      'minor',
      'Rules',
      rules.added.map((name) => `new ${code(name)}`),
      ', ',
    ),
    ...proposal(
      'major',
      'Rules',
      rules.removed.map((name) => `${code(name)} is gone`),
      ', ',
    ),
  ];
}
