import {
  type AcknowledgedFinding,
  compareText,
  type Finding,
  isAtLeast,
  type Severity,
} from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { xmlAttribute, xmlContent } from '../../text/xml-text.ts';

/** What was checked, and how. */
interface JunitRun {
  /** Paths of all files that were checked, those without findings too. */
  readonly files: readonly string[];
  /** Lowest severity by which a test case fails. */
  readonly failOn: Severity;
  /** Day of the check, YYYY-MM-DD. */
  readonly day: string;
}

/** What reviewers have accepted: how much, and what of it is to be listed. */
interface AcknowledgedInReport {
  readonly count: number;
  readonly listed: readonly AcknowledgedFinding[];
}

/**
 * Findings as JUnit XML, the form in which build servers read test results, by the narrowest schema in use: one test case a
 * file. It fails where a finding has at least the severity `failOn`; lesser ones, and acknowledged ones where they are given,
 * stand in the output of the suite. A property counts what is acknowledged. Nothing is timed, and the day stands for the moment, so
 * that the same check gives the same bytes.
 */
export function formatFindingsAsJunit(
  findings: readonly Finding[],
  { files, failOn, day }: JunitRun,
  { count, listed }: AcknowledgedInReport = { count: 0, listed: [] },
): string {
  const all = [...new Set([...files, ...[...findings, ...listed].map(({ file }) => file)])].sort(compareText);
  const fails = ({ severity }: Finding) => isAtLeast(severity, failOn);
  const failing = groupedBy(findings.filter(fails), ({ file }) => file);
  const cases = all.map((file) => ({ file, failing: failing.get(file) ?? [] }));
  const failures = cases.filter((each) => each.failing.length > 0).length;
  const others = [
    ...findings.filter((finding) => !fails(finding)).map(textOf),
    ...listed.map(acknowledgedText),
  ];
  const counts = `tests="${cases.length}" failures="${failures}" errors="0"`;
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<testsuites>',
    `  <testsuite name="check" package="meltbounds" id="0" timestamp="${day}T00:00:00" hostname="localhost" ${counts} time="0">`,
    `    <properties><property name="acknowledged" value="${count}"/></properties>`,
    ...cases.flatMap(testCase),
    `    <system-out>${texts(others)}</system-out>`,
    '    <system-err></system-err>',
    '  </testsuite>',
    '</testsuites>',
  ];
  return `${lines.join('\n')}\n`;
}

interface Case {
  readonly file: string;
  readonly failing: readonly Finding[];
}

function testCase({ file, failing }: Case): string[] {
  const opening = `    <testcase name="${xmlAttribute(file)}" classname="profiles" time="0"`;
  const [first] = failing;
  if (first === undefined) return [`${opening}/>`];
  const message =
    failing.length === 1 ? first.message : `${failing.length} findings, the first: ${first.message}`;
  return [
    `${opening}>`,
    `      <failure message="${xmlAttribute(message)}" type="${xmlAttribute(first.rule)}">${texts(failing.map(textOf))}</failure>`,
    '    </testcase>',
  ];
}

function texts(all: readonly string[]): string {
  return xmlContent(all.join('\n'));
}

function acknowledgedText(finding: AcknowledgedFinding): string {
  return `${textOf(finding)}\nacknowledged until ${finding.until}: ${finding.reason}`;
}

function textOf({ file, line, column, severity, rule, message, source, help }: Finding): string {
  const details = [source === null ? null : `because ${source}`, help === null ? null : `fix     ${help}`];
  return [
    `${file}:${line}:${column} ${severity} ${rule}`,
    `wrong   ${message}`,
    ...details.filter((detail) => detail !== null),
  ].join('\n');
}
