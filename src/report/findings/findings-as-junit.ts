import { compareText, type Finding, isAtLeast, type Severity } from '../../registry/finding.ts';
import { xmlAttribute, xmlContent } from '../../text/xml-text.ts';

/**
 * Findings as JUnit XML, the form in which build servers read test results: one test case a file. It fails where a
 * finding has at least the severity `failOn`; lesser ones are printed with it.
 */
export function formatFindingsAsJunit(
  findings: readonly Finding[],
  files: readonly string[],
  failOn: Severity,
): string {
  const all = [...new Set([...files, ...findings.map(({ file }) => file)])].sort(compareText);
  const cases = all.map((file) => {
    const own = findings.filter((finding) => finding.file === file);
    const failing = own.filter(({ severity }) => isAtLeast(severity, failOn));
    return { file, failing, others: own.filter((finding) => !failing.includes(finding)) };
  });
  const failures = cases.filter(({ failing }) => failing.length > 0).length;
  const counts = `tests="${cases.length}" failures="${failures}" errors="0" skipped="0"`;
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="meltbounds" ${counts}>`,
    `  <testsuite name="check" ${counts}>`,
    ...cases.flatMap(testCase),
    '  </testsuite>',
    '</testsuites>',
  ];
  return `${lines.join('\n')}\n`;
}

interface Case {
  readonly file: string;
  readonly failing: readonly Finding[];
  readonly others: readonly Finding[];
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
          `      <failure message="${xmlAttribute(message ?? '')}" type="${xmlAttribute(first.rule)}">${texts(failing)}</failure>`,
        ]),
    ...(others.length === 0 ? [] : [`      <system-out>${texts(others)}</system-out>`]),
    '    </testcase>',
  ];
}

function texts(findings: readonly Finding[]): string {
  return xmlContent(findings.map(textOf).join('\n'));
}

function textOf({ file, line, column, severity, rule, message, source, help }: Finding): string {
  const details = [source === null ? null : `because ${source}`, help === null ? null : `fix     ${help}`];
  return [
    `${file}:${line}:${column} ${severity} ${rule}`,
    `wrong   ${message}`,
    ...details.filter((detail) => detail !== null),
  ].join('\n');
}
