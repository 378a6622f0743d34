/** From the most serious: error is impossible or contradictory, warning unusual, note a matter of style. */
export const severities = ['error', 'warning', 'note'] as const;

/** how serious a finding is, the most serious first: impossible or contradictory, unusual, style. */
export type Severity = (typeof severities)[number];

/** Whether a severity is as serious as another one, or more so. */
export function isAtLeast(severity: Severity, other: Severity): boolean {
  return severities.indexOf(severity) <= severities.indexOf(other);
}

/** Part of a text, lines and columns counted from 1; columns in UTF-16 code units; the end is exclusive. */
export interface Span {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export const wholeFile: Span = { line: 1, column: 1, endLine: 1, endColumn: 1 };

/** One thing that is wrong with a profile, and what to do about it. */
export interface Finding extends Span {
  /** Code of the rule, `units/wrong-dimension` for instance. */
  readonly rule: string;
  readonly severity: Severity;
  /** What is wrong. */
  readonly message: string;
  /** Path of the file as the user would type it, with `/` between folders. */
  readonly file: string;
  /** JSON pointer (RFC 6901) to the place in the document, empty for the whole. */
  readonly pointer: string;
  /** What stands there. */
  readonly found: string | null;
  /** What would do. */
  readonly allowed: string | null;
  /** Where the limit comes from. */
  readonly source: string | null;
  /** What to do. */
  readonly help: string | null;
}

/** A finding that a reviewer has accepted. */
export interface AcknowledgedFinding extends Finding {
  /** Why. */
  readonly reason: string;
  /** Last day on which it is accepted, YYYY-MM-DD. */
  readonly until: string;
}

/** Order of findings: by file, place, rule, message; the same on every machine, so no locale is asked. */
export function compareFindings(a: Finding, b: Finding): number {
  return (
    compareText(a.file, b.file) ||
    a.line - b.line ||
    a.column - b.column ||
    compareText(a.rule, b.rule) ||
    compareText(a.message, b.message)
  );
}

/** Order of texts by code unit, which depends on no locale. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
