import type { Finding, Severity } from '../../registry/finding.ts';
import { annotationsReport } from './annotations-report.ts';
import { jsonReport } from './json-report.ts';
import { junitReport } from './junit-report.ts';
import { sarifReport } from './sarif-report.ts';
import type { Summary } from './summary.ts';
import { textReport } from './text-report.ts';

/** What a check has found, and what the forms of its report need besides. */
export interface CheckReport {
  readonly findings: readonly Finding[];
  readonly summary: Summary;
  /** Paths of all files that were checked, those without findings too. */
  readonly files: readonly string[];
  /** Lowest severity that counts as a failure. */
  readonly failOn: Severity;
  readonly version: string;
  readonly colour: boolean;
  readonly textOf: (file: string) => string | undefined;
}

export const reportFormats = ['text', 'json', 'sarif', 'junit', 'annotations'] as const;

export type ReportFormat = (typeof reportFormats)[number];

export const writeReport: Readonly<Record<ReportFormat, (report: CheckReport) => string>> = {
  text: ({ findings, summary, colour, textOf }) => textReport(findings, summary, { colour, textOf }),
  json: ({ findings, summary }) => jsonReport(findings, summary),
  sarif: ({ findings, version }) => sarifReport(findings, version),
  junit: ({ findings, files, failOn }) => junitReport(findings, files, failOn),
  annotations: ({ findings, summary }) => annotationsReport(findings, summary),
};
