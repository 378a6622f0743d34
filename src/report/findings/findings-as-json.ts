import type { Finding } from '../../registry/finding.ts';
import type { Summary } from './summary.ts';

/** Version of the form of the JSON findings, see `schema/output/check.schema.json`. */
const checkFormat = 'meltbounds-check/1';

/** Findings for programs: the keys of each finding always all present, null where there is nothing to say. */
export function formatFindingsAsJson(findings: readonly Finding[], summary: Summary): string {
  const document = { format: checkFormat, findings: findings.map(reportedFinding), summary };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** A finding as programs read it. */
export function reportedFinding({
  rule,
  severity,
  message,
  file,
  line,
  column,
  pointer,
  found,
  allowed,
  source,
  help,
}: Finding) {
  return { rule, severity, message, file, line, column, pointer, found, allowed, source, help };
}
