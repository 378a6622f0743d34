import type { Finding } from '../registry/finding.ts';
import type { Summary } from './summary.ts';

/** Findings for programs: the keys of each finding always all present, null where there is nothing to say. */
export function jsonReport(findings: readonly Finding[], summary: Summary): string {
  return `${JSON.stringify({ findings: findings.map(reportedFinding), summary }, null, 2)}\n`;
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
