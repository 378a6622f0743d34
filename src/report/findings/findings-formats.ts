import type { AcknowledgedFinding, Finding, Severity } from '../../registry/finding.ts';
import { formatDocument } from '../../units/format-document.ts';
import type { ReportFormat } from '../report-formats.ts';
import { formatFindingsAsAnnotations } from './findings-as-annotations.ts';
import { formatFindingsAsCodeQuality } from './findings-as-code-quality.ts';
import { formatFindingsAsJson } from './findings-as-json.ts';
import { formatFindingsAsJunit } from './findings-as-junit.ts';
import { formatFindingsAsMarkdown } from './findings-as-markdown.ts';
import { findingsDocument, type TextOf } from './findings-document.ts';
import type { Summary } from './summary.ts';

/** What a check has found, and what the forms of its report need besides. */
interface CheckReport {
  readonly findings: readonly Finding[];
  readonly summary: Summary;
  /** What reviewers have accepted, if it is to be listed. */
  readonly acknowledged: readonly AcknowledgedFinding[] | null;
  /** Paths of all files that were checked, those without findings too. */
  readonly files: readonly string[];
  /** Lowest severity that counts as a failure. */
  readonly failOn: Severity;
  readonly version: string;
  /** Day of the check, YYYY-MM-DD. */
  readonly today: string;
  readonly colour: boolean;
  readonly textOf: TextOf;
}

function acceptedIn({ summary, acknowledged }: Pick<CheckReport, 'summary' | 'acknowledged'>) {
  return { count: summary.acknowledged, listed: acknowledged ?? [] };
}

/** One that quotes the rules, or draws a page, loads what it needs first. */
type FormatReport = (report: CheckReport) => string | Promise<string>;

export const formatReport: Readonly<Record<ReportFormat, FormatReport>> = {
  text: ({ findings, summary, acknowledged, colour, textOf }) =>
    formatDocument(findingsDocument(findings, summary, textOf, acknowledged ?? []), 'text', { colour }),
  json: ({ findings, summary, acknowledged }) => formatFindingsAsJson(findings, summary, acknowledged),
  sarif: async ({ findings, version, ...report }) =>
    (await import('./findings-as-sarif.ts')).formatFindingsAsSarif(
      findings,
      version,
      acceptedIn(report),
      report.textOf,
    ),
  junit: ({ findings, files, failOn, today, ...report }) =>
    formatFindingsAsJunit(findings, { files, failOn, day: today }, acceptedIn(report)),
  annotations: ({ findings, summary, acknowledged }) =>
    formatFindingsAsAnnotations(findings, summary, acknowledged ?? []),
  codeQuality: ({ findings }) => formatFindingsAsCodeQuality(findings),
  markdown: ({ findings, summary, acknowledged, textOf }) =>
    formatFindingsAsMarkdown(findings, summary, textOf, acknowledged ?? []),
  html: async ({ findings, summary, acknowledged, textOf }) =>
    (await import('./findings-as-html.ts')).formatFindingsAsHtml(
      findings,
      summary,
      textOf,
      acknowledged ?? [],
    ),
};
