import type { ReadDocument } from '../registry/profile.ts';
import { isObject } from '../registry/shape.ts';

/** A finding that a reviewer has accepted, as the profile that it is about says. */
export interface Acknowledgement {
  /** Position in the list of the profile, from 0. */
  readonly index: number;
  /** Code of the rule that finds it. */
  readonly rule: string;
  /** JSON pointer (RFC 6901) to the place whose finding is accepted, or to what holds it. */
  readonly at: string;
  /** What the rule finds there; of anything else nothing is accepted. */
  readonly found: string;
  readonly reason: string;
  /** Last day on which it is accepted, YYYY-MM-DD. */
  readonly until: string;
}

/** As many as the schema allows; what a hostile list holds beyond is not looked at. */
const mostAcknowledgements = 200;

/** The acknowledgements of a document as they are written; an entry that does not fit the schema accepts nothing. */
export function acknowledgementsOf({ written }: ReadDocument): Acknowledgement[] {
  if (!isObject(written) || !Array.isArray(written.acknowledged)) return [];
  return written.acknowledged.slice(0, mostAcknowledgements).flatMap((entry: unknown, index) => {
    if (!isObject(entry)) return [];
    const { rule, at, found, reason, until } = entry;
    return typeof rule === 'string' &&
      typeof at === 'string' &&
      typeof found === 'string' &&
      typeof reason === 'string' &&
      reason.trim() !== '' &&
      typeof until === 'string'
      ? [{ index, rule, at, found, reason, until }]
      : [];
  });
}

/**
 * Why a rule's findings are never accepted: a limit that is refuted, one that would count for more than was measured, a value
 * of unknown origin, danger to people.
 */
export type NeverAccepted = 'refuted' | 'unbounded' | 'provenance' | 'safety';

/** Rules that find a limit refuted by the readings or the interval that it is stated with, or these altered. */
const refuting: ReadonlySet<string> = new Set([
  'evidence/readings-changed',
  'evidence/unsupported',
  'evidence/value-above-interval',
]);

/** Errors about heat and fumes. Less than certain danger can be accepted, since somebody has looked: warnings, notes. */
const dangerous: ReadonlySet<string> = new Set([
  'consistency/hot-end-limit',
  'plausibility/drying-temperature',
  'plausibility/nozzle-temperature',
  'safety/feedstock',
  'safety/liner-fumes',
]);

/** Why no finding of a rule may be accepted, whatever a reviewer says; null where one may. */
export function neverAccepted(rule: string): NeverAccepted | null {
  if (refuting.has(rule)) return 'refuted';
  if (rule === 'evidence/missing-condition') return 'unbounded';
  if (rule.startsWith('provenance/') || rule === 'references/dangling') return 'provenance';
  return dangerous.has(rule) ? 'safety' : null;
}

/** The last day, YYYY-MM-DD, up to which something can be accepted on a day: twelve months later somebody looks again. */
export function lastAcceptableDay(today: string): string {
  return `${String(Number(today.slice(0, 4)) + 1).padStart(4, '0')}${today.slice(4)}`;
}

/** Whether an acknowledgement can accept anything on a day: its rule, place and last day allow it. */
export function isLive({ rule, at, until }: Acknowledgement, today: string): boolean {
  return at !== '' && neverAccepted(rule) === null && until >= today && until <= lastAcceptableDay(today);
}
