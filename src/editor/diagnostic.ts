import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Diagnostic } from 'vscode-languageserver-types';
import type { Finding, Severity } from '../registry/finding.ts';
import { rulePageAddress } from '../report/rules/rule-address.ts';
import { oneLine } from '../text/one-line.ts';
import { inPrint } from '../units/in-print.ts';
import { rangeOfSpan } from './text-range.ts';

/** Error, warning and information by the Language Server Protocol. */
const severities = { error: 1, warning: 2, note: 3 } as const satisfies Readonly<Record<Severity, number>>;

/** Who says it, which editors show beside the message. */
export const diagnosticSource = 'meltbounds';

/** A finding as an editor shows it at its place in an open text. */
export function diagnosticOf(finding: Finding, open: TextDocument): Diagnostic {
  return {
    range: rangeOfSpan(open, finding),
    severity: severities[finding.severity],
    code: finding.rule,
    codeDescription: { href: rulePageAddress(finding.rule) },
    source: diagnosticSource,
    message: messageOf(finding),
  };
}

/** What is wrong, what would do, by which source, and what to do: a line each, as in a report. */
function messageOf({ message, allowed, source, help }: Finding): string {
  const lines = [
    message,
    ...(allowed === null ? [] : [`allowed: ${allowed}`]),
    ...(source === null ? [] : [`because: ${source}`]),
    ...(help === null ? [] : [`fix: ${help}`]),
  ];
  return lines.map((line) => oneLine(inPrint(line))).join('\n');
}
