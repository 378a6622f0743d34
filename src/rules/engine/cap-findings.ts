import { compareFindings, type Finding, severities } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { ruleOf } from './rules.ts';

/** Nobody fixes more in one go, and a hostile file of 1 MiB holds tens of thousands. */
export const mostFindingsPerFile = 200;

/** The most serious findings of each file up to the most that is shown, with one more that says how many are left out. */
export function capFindings(findings: readonly Finding[]): Finding[] {
  return [...groupedBy(findings, ({ file }) => file).values()].flatMap(capped).sort(compareFindings);
}

function capped(ofFile: readonly Finding[]): readonly Finding[] {
  if (ofFile.length <= mostFindingsPerFile) return ofFile;
  const mostSeriousFirst = ofFile.toSorted(
    (a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity) || compareFindings(a, b),
  );
  const shown = mostSeriousFirst.slice(0, mostFindingsPerFile);
  const [left] = mostSeriousFirst.slice(mostFindingsPerFile);
  const last = shown.toSorted(compareFindings).at(-1);
  if (left === undefined || last === undefined) return ofFile;
  return [...shown, andMore(left, last, ofFile.length - mostFindingsPerFile)];
}

/** Stands at the last place shown, and is as serious as the most serious of what is left out. */
function andMore(left: Finding, { line, column, endLine, endColumn }: Finding, count: number): Finding {
  return {
    rule: 'file/many-findings',
    severity: left.severity,
    message: `${count} more ${count === 1 ? 'finding' : 'findings'} in this file are not shown`,
    file: left.file,
    ...{ line, column, endLine, endColumn },
    pointer: '',
    found: String(count + mostFindingsPerFile),
    allowed: `up to ${mostFindingsPerFile} findings shown for a file`,
    source: ruleOf('file/many-findings').source,
    help: 'Fix those that are shown and check again: many of the rest are often the same slip.',
  };
}
