import type { AcknowledgedFinding, Finding, Severity } from '../../registry/finding.ts';
import { escapeCommandMessage, escapeCommandProperty } from '../../text/escape.ts';
import { printable } from '../../text/printable.ts';
import { counted } from '../../text/words.ts';
import { type Summary, summaryText } from './summary.ts';

/** Code hosts show no more annotations of each kind for one step of a workflow. */
const mostShown = 10;

const commands: Readonly<Record<Severity, string>> = { error: 'error', warning: 'warning', note: 'notice' };

/**
 * Findings as workflow commands, the lines by which a build step has a code host mark files of a change: errors first,
 * since only the first ten of each kind are shown. Where some are not, an annotation says how many. What is
 * acknowledged is a notice behind all of them, where it is given.
 */
export function formatFindingsAsAnnotations(
  findings: readonly Finding[],
  summary: Summary,
  acknowledged: readonly AcknowledgedFinding[] = [],
): string {
  const of = (severity: Severity) => findings.filter((finding) => finding.severity === severity);
  const [errors, warnings, notes] = [of('error'), of('warning'), of('note')];
  const hidden = [errors, warnings, notes].map((group) => Math.max(0, group.length - mostShown));
  const rest = restText(hidden);
  const lines = [
    ...[...errors, ...warnings].map(annotation),
    // It counts as a notice, of which ten are shown as well, so it must not come last.
    ...(rest === null ? [] : [`::notice title=meltbounds::${escapeCommandMessage(rest)}`]),
    ...notes.map(annotation),
    ...acknowledged.map(acknowledgement),
    summaryText(summary),
  ];
  return `${lines.join('\n')}\n`;
}

function annotation(finding: Finding): string {
  const { file, line, column, endLine, endColumn, severity, rule, help } = finding;
  const columns = endLine === line ? { col: column, endColumn: Math.max(endColumn, column) } : {};
  const properties = Object.entries({ file, line, endLine, ...columns, title: rule })
    .map(([name, value]) => `${name}=${escapeCommandProperty(String(value))}`)
    .join(',');
  const text = [finding.message, ...(help === null ? [] : [help])].map(printable).join('\n');
  return `::${commands[severity]} ${properties}::${escapeCommandMessage(text)}`;
}

function acknowledgement(finding: AcknowledgedFinding): string {
  const { message, until, reason } = finding;
  return annotation({
    ...finding,
    severity: 'note',
    message: `Acknowledged until ${until}: ${message}`,
    help: reason,
  });
}

function restText([errors = 0, warnings = 0, notes = 0]: readonly number[]): string | null {
  const counts = [
    [errors, 'error'],
    [warnings, 'warning'],
    [notes, 'note'],
  ] as const;
  const parts = counts.filter(([count]) => count > 0).map(([count, word]) => counted(count, word));
  return parts.length === 0 ? null : `Not shown here, but in the log of this step: ${parts.join(', ')}.`;
}
