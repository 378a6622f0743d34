import type { Finding, Severity } from '../../registry/finding.ts';
import { formatDocument } from '../../units/format-document.ts';
import type { ReportFormat } from '../report-formats.ts';
import { formatFindingsAsAnnotations } from './findings-as-annotations.ts';
import { formatFindingsAsJson } from './findings-as-json.ts';
import { formatFindingsAsJunit } from './findings-as-junit.ts';
import { findingsDocument, type TextOf } from './findings-document.ts';
import type { Summary } from './summary.ts';

/** What a check has found, and what the forms of its report need besides. */
interface CheckReport {
  readonly findings: readonly Finding[];
  readonly summary: Summary;
  /** Paths of all files that were checked, those without findings too. */
  readonly files: readonly string[];
  /** Lowest severity that counts as a failure. */
  readonly failOn: Severity;
  readonly version: string;
  readonly colour: boolean;
  readonly textOf: TextOf;
}

/** One that quotes the rules loads them first. */
type FormatReport = (report: CheckReport) => string | Promise<string>;

export const formatReport: Readonly<Record<ReportFormat, FormatReport>> = {
  text: ({ findings, summary, colour, textOf }) =>
    formatDocument(findingsDocument(findings, summary, textOf), 'text', { colour }),
  json: ({ findings, summary }) => formatFindingsAsJson(findings, summary),
  sarif: async ({ findings, version }) =>
    (await import('./findings-as-sarif.ts')).formatFindingsAsSarif(findings, version),
  junit: ({ findings, files, failOn }) => formatFindingsAsJunit(findings, files, failOn),
  annotations: ({ findings, summary }) => formatFindingsAsAnnotations(findings, summary),
};
