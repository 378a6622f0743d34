import type { AcknowledgedFinding, Finding } from '../../registry/finding.ts';
import { htmlPage } from '../../tables/card/html-page.ts';
import { findingsDocument, type TextOf } from './findings-document.ts';
import type { Summary } from './summary.ts';

/** Findings as one page for a colleague without the program: it needs no other file, runs no script and asks no network. */
export function formatFindingsAsHtml(
  findings: readonly Finding[],
  summary: Summary,
  textOf: TextOf,
  acknowledged: readonly AcknowledgedFinding[] = [],
): string {
  const title = 'Check of the profiles';
  const { answer, sections } = findingsDocument(findings, summary, textOf, acknowledged);
  return htmlPage(title, { title, answer, blocks: sections });
}
