import type { Finding, Severity } from '../../registry/finding.ts';
import { counted } from '../../text/words.ts';

/** How many profiles were checked, how many findings of each severity they have, and how many reviewers have accepted. */
export interface Summary {
  readonly profiles: number;
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly acknowledged: number;
}

/** Counts the findings of a check over a number of profiles, of which some more were acknowledged. */
export function summarise(findings: readonly Finding[], profiles: number, acknowledged = 0): Summary {
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  return { profiles, errors: count('error'), warnings: count('warning'), notes: count('note'), acknowledged };
}

/** The summary as a sentence: `12 profiles: 1 error, 2 warnings; 1 finding acknowledged.` */
export function summaryText({ profiles, errors, warnings, notes, acknowledged }: Summary): string {
  const parts = [
    counted(errors, 'error'),
    warnings > 0 ? counted(warnings, 'warning') : '',
    notes > 0 ? counted(notes, 'note') : '',
  ].filter((part) => part !== '');
  const found = errors + warnings + notes === 0 ? 'no problems found' : parts.join(', ');
  const accepted = acknowledged === 0 ? '' : `; ${counted(acknowledged, 'finding')} acknowledged`;
  return `${counted(profiles, 'profile')}: ${found}${accepted}.`;
}
