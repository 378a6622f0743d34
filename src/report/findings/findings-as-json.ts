import type { AcknowledgedFinding, Finding } from '../../registry/finding.ts';
import { jsonText } from '../../text/json-text.ts';
import type { Summary } from './summary.ts';

/** Version of the form of the JSON findings, see `schema/output/check.schema.json`. */
const checkFormat = 'meltbounds-check/1';

/**
 * Findings for programs: the keys of each finding always all present, null where there is nothing to say. Acknowledged
 * ones are listed where they are given.
 */
export function formatFindingsAsJson(
  findings: readonly Finding[],
  summary: Summary,
  acknowledged: readonly AcknowledgedFinding[] | null = null,
): string {
  const document = {
    format: checkFormat,
    findings: findings.map(reportedFinding),
    ...(acknowledged !== null && { acknowledged: acknowledged.map(reportedAcknowledgement) }),
    summary,
  };
  return jsonText(document);
}

function reportedAcknowledgement(finding: AcknowledgedFinding) {
  const { reason, until } = finding;
  return { ...reportedFinding(finding), reason, until };
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
