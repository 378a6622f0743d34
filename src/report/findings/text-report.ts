import { createColors } from 'picocolors';
import type { Finding, Severity } from '../../registry/finding.ts';
import { printable } from '../../text/printable.ts';
import { sourceFrame } from './source-frame.ts';
import { type Summary, summaryText } from './summary.ts';

export interface TextReportOptions {
  readonly colour: boolean;
  /** Text of a file, for showing the line of a finding. */
  readonly textOf: (file: string) => string | undefined;
}

type Colours = ReturnType<typeof createColors>;

/** Findings for people: where, the line itself, what is wrong, why, what to do; then a summary. */
export function textReport(
  findings: readonly Finding[],
  summary: Summary,
  options: TextReportOptions,
): string {
  const colours = createColors(options.colour);
  const blocks = findings.map((finding) => block(finding, options, colours));
  return `${[...blocks, summaryLine(summary, colours)].join('\n')}\n`;
}

function block(finding: Finding, options: TextReportOptions, colours: Colours): string {
  const place = colours.bold(`${printable(finding.file)}:${finding.line}:${finding.column}`);
  const heading = `${place}  ${severityText(finding.severity, colours)}  ${colours.dim(finding.rule)}`;
  return [heading, ...frameLines(finding, options, colours), ...prose(finding), ''].join('\n');
}

function severityText(severity: Severity, colours: Colours): string {
  if (severity === 'error') return colours.red('error');
  return severity === 'warning' ? colours.yellow('warning') : colours.cyan('note');
}

function frameLines(finding: Finding, options: TextReportOptions, colours: Colours): string[] {
  const text = options.textOf(finding.file);
  const frame = text === undefined ? null : sourceFrame(text, finding);
  if (frame === null) return [];
  const number = String(finding.line);
  return [
    `  ${colours.dim(`${number} |`)} ${frame.line}`,
    `  ${colours.dim(`${' '.repeat(number.length)} |`)} ${colours.bold(frame.marker)}`,
  ];
}

/** What, why and what to do, under labels of one width. */
function prose(finding: Finding): string[] {
  const lines: [string, string | null][] = [
    ['wrong', finding.message],
    ['allowed', finding.allowed],
    ['because', finding.source],
    ['fix', finding.help],
  ];
  return lines.flatMap(([label, text]) => (text === null ? [] : [`  ${label.padEnd(8)} ${printable(text)}`]));
}

function summaryLine(summary: Summary, colours: Colours): string {
  const text = summaryText(summary);
  if (summary.errors > 0) return colours.red(text);
  return summary.warnings > 0 ? colours.yellow(text) : colours.green(text);
}
