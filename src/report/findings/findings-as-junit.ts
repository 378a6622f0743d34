import {
  type AcknowledgedFinding,
  compareText,
  type Finding,
  isAtLeast,
  type Severity,
} from '../../registry/finding.ts';
import { xmlAttribute, xmlContent } from '../../text/xml-text.ts';

/**
 * Findings as JUnit XML, the form in which build servers read test results: one test case a file. It fails where a
 * finding has at least the severity `failOn`; lesser ones are printed with it. A property counts what is acknowledged;
 * where it is given, it is printed with its file.
 */
export function formatFindingsAsJunit(
  findings: readonly Finding[],
  files: readonly string[],
  failOn: Severity,
  { count, listed }: AcknowledgedInReport = { count: 0, listed: [] },
): string {
  const all = [...new Set([...files, ...[...findings, ...listed].map(({ file }) => file)])].sort(compareText);
  const cases = all.map((file) => {
    const own = findings.filter((finding) => finding.file === file);
    const failing = own.filter(({ severity }) => isAtLeast(severity, failOn));
    return {
      file,
      failing,
      others: [
        ...own.filter((finding) => !failing.includes(finding)).map(textOf),
        ...listed.filter((finding) => finding.file === file).map(acknowledgedText),
      ],
    };
  });
  const failures = cases.filter(({ failing }) => failing.length > 0).length;
  const counts = `tests="${cases.length}" failures="${failures}" errors="0" skipped="0"`;
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="meltbounds" ${counts}>`,
    `  <testsuite name="check" ${counts}>`,
    `    <properties><property name="acknowledged" value="${count}"/></properties>`,
    ...cases.flatMap(testCase),
    '  </testsuite>',
    '</testsuites>',
  ];
  return `${lines.join('\n')}\n`;
}

/** What reviewers have accepted: how much, and what of it is to be listed. */
interface AcknowledgedInReport {
  readonly count: number;
  readonly listed: readonly AcknowledgedFinding[];
}

interface Case {
  readonly file: string;
  readonly failing: readonly Finding[];
  /** Texts of what does not make it fail. */
  readonly others: readonly string[];
}

function testCase({ file, failing, others }: Case): string[] {
  const opening = `    <testcase name="${xmlAttribute(file)}" classname="profiles"`;
  const [first] = failing;
  if (first === undefined && others.length === 0) return [`${opening}/>`];
  const message =
    failing.length === 1 ? first?.message : `${failing.length} findings, the first: ${first?.message}`;
  return [
    `${opening}>`,
    ...(first === undefined
      ? []
      : [
          `      <failure message="${xmlAttribute(message ?? '')}" type="${xmlAttribute(first.rule)}">${texts(failing.map(textOf))}</failure>`,
        ]),
    ...(others.length === 0 ? [] : [`      <system-out>${texts(others)}</system-out>`]),
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
