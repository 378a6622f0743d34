import {
  type AcknowledgedFinding,
  compareFindings,
  type Finding,
  severities,
} from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { ruleOf } from './rules.ts';

/** Nobody fixes more in one go, and a hostile file of 1 MiB holds tens of thousands. */
export const mostFindingsPerFile = 200;

/** A report of thousands of hostile files stays some ten megabytes in its longest form. */
const mostFindingsOfReport = 10_000;

/**
 * The most serious findings of each file up to the most that is shown, with one more that says how many are left out. Where
 * the whole report would be too long, fewer of each file are shown, but one at least, so that no file seems to pass.
 */
export function capFindings(findings: readonly Finding[]): Finding[] {
  return capEach(findings, (more) => more);
}

/** The same of what reviewers have accepted, where a report lists it. */
export function capAcknowledged(acknowledged: readonly AcknowledgedFinding[]): AcknowledgedFinding[] {
  return capEach(acknowledged, (more, { until }) => ({
    ...more,
    message: `${more.message}; they are acknowledged too`,
    reason: 'Each of them has a reason of its own in the file',
    until,
  }));
}

/** Gives what says how many are left out, made from a finding and the most serious of those. */
type Rest<Found extends Finding> = (more: Finding, left: Found) => Found;

function capEach<Found extends Finding>(findings: readonly Found[], rest: Rest<Found>): Found[] {
  const ofFiles = [...groupedBy(findings, ({ file }) => file).values()];
  const most = mostOfFile(ofFiles.map(({ length }) => length));
  return ofFiles.flatMap((ofFile) => capped(ofFile, most, rest)).sort(compareFindings);
}

/** How many findings of each file are shown, given how many each has. */
function mostOfFile(counts: readonly number[]): number {
  const shown = counts.reduce((sum, count) => sum + Math.min(count, mostFindingsPerFile), 0);
  if (shown <= mostFindingsOfReport) return mostFindingsPerFile;
  return Math.min(mostFindingsPerFile, Math.max(1, Math.floor(mostFindingsOfReport / counts.length)));
}

function capped<Found extends Finding>(
  ofFile: readonly Found[],
  most: number,
  rest: Rest<Found>,
): readonly Found[] {
  if (ofFile.length <= most) return ofFile;
  const mostSeriousFirst = ofFile.toSorted(
    (a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity) || compareFindings(a, b),
  );
  const shown = mostSeriousFirst.slice(0, most);
  const [left] = mostSeriousFirst.slice(most);
  const last = shown.toSorted(compareFindings).at(-1);
  if (left === undefined || last === undefined) return ofFile;
  return [...shown, rest(andMore(left, last, ofFile.length, most), left)];
}

/** Stands at the last place shown, and is as serious as the most serious of what is left out. */
function andMore(
  left: Finding,
  { line, column, endLine, endColumn }: Finding,
  all: number,
  most: number,
): Finding {
  const count = all - most;
  return {
    rule: 'file/many-findings',
    severity: left.severity,
    message: `${count} more ${count === 1 ? 'finding' : 'findings'} in this file are not shown`,
    file: left.file,
    ...{ line, column, endLine, endColumn },
    pointer: '',
    found: String(all),
    allowed: `up to ${most} ${most === 1 ? 'finding' : 'findings'} shown for a file`,
    source: ruleOf('file/many-findings').source,
    help: 'Fix those that are shown and check again: many of the rest are often the same slip.',
  };
}
