import type { Finding, Severity } from '../../registry/finding.ts';
import { jsonText } from '../../text/json-text.ts';
import { oneLine } from '../../text/one-line.ts';
import { fingerprinter } from './fingerprints.ts';

const severities = { error: 'critical', warning: 'major', note: 'info' } as const satisfies Record<
  Severity,
  string
>;

/**
 * Findings as the list that widgets of merge requests read: description, name of the check, severity, place, and a fingerprint by
 * which a finding that was there before is known. What is acknowledged is not in it, since the form has no word for it.
 */
export function formatFindingsAsCodeQuality(findings: readonly Finding[]): string {
  const fingerprint = fingerprinter();
  return jsonText(
    findings.map((finding) => ({
      description: oneLine([finding.message, finding.help].filter((text) => text !== null).join('. ')),
      check_name: finding.rule,
      fingerprint: fingerprint(finding),
      severity: severities[finding.severity],
      location: { path: finding.file, lines: { begin: finding.line, end: finding.endLine } },
    })),
  );
}
