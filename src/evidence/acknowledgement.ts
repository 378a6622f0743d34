import type { ReadDocument } from '../registry/profile.ts';
import { isObject } from '../registry/shape.ts';

/** A finding that a reviewer has accepted, as the profile that it is about says. */
export interface Acknowledgement {
  /** Position in the list of the profile, from 0. */
  readonly index: number;
  /** Code of the rule that finds it. */
  readonly rule: string;
  /** JSON pointer (RFC 6901) to the place whose findings are accepted, and those below it. */
  readonly at: string;
  readonly reason: string;
  /** Last day on which it is accepted, YYYY-MM-DD. */
  readonly until: string;
}

/** The acknowledgements of a document as they are written; an entry that does not fit the schema accepts nothing. */
export function acknowledgementsOf({ written }: ReadDocument): Acknowledgement[] {
  if (!isObject(written) || !Array.isArray(written.acknowledged)) return [];
  return written.acknowledged.flatMap((entry: unknown, index) => {
    if (!isObject(entry)) return [];
    const { rule, at, reason, until } = entry;
    return typeof rule === 'string' &&
      typeof at === 'string' &&
      typeof reason === 'string' &&
      typeof until === 'string'
      ? [{ index, rule, at, reason, until }]
      : [];
  });
}

/** Rules that find a limit refuted by the readings or the interval that it is stated with, or these altered. */
const refuting: ReadonlySet<string> = new Set([
  'evidence/readings-changed',
  'evidence/unsupported',
  'evidence/value-above-interval',
]);

/** Whether a finding of a rule may be accepted at all: no reviewer makes a limit true that its own readings refute. */
export function canBeAcknowledged(rule: string): boolean {
  return !refuting.has(rule);
}

/** Whether an acknowledgement accepts what a rule finds at a place, given as a JSON pointer, on a day. */
export function accepts(
  entry: Acknowledgement,
  finding: { readonly rule: string; readonly pointer: string },
  today: string,
): boolean {
  const { rule, at, until } = entry;
  const { pointer } = finding;
  return (
    until >= today &&
    rule === finding.rule &&
    canBeAcknowledged(rule) &&
    (pointer === at || pointer.startsWith(`${at}/`))
  );
}

/** The first acknowledgement in a document of what a rule finds there, on a day; null where there is none. */
export function acknowledgementOf(
  document: ReadDocument,
  finding: { readonly rule: string; readonly pointer: string },
  today: string,
): Acknowledgement | null {
  return acknowledgementsOf(document).find((entry) => accepts(entry, finding, today)) ?? null;
}
