import type { TextFormat } from '../../text/format-text.ts';
import { formatDocument } from '../../units/format-document.ts';
import { formatFindingsAsAnnotations } from '../findings/findings-as-annotations.ts';
import { summarise } from '../findings/summary.ts';
import type { DiffFormat } from '../report-formats.ts';
import { formatDiffAsJson } from './diff-as-json.ts';
import { type DiffLimits, diffDocument } from './diff-document.ts';
import type { DiffReport } from './diff-report.ts';

/** First line of every comment, by which the one that an earlier comparison was posted as is found again. */
const diffMarker = '<!-- meltbounds diff -->';

/** A comment stays short; code hosts refuse those of 65 536 characters. */
const commentLimits: DiffLimits = { profiles: 20, changes: 10, findings: 20, length: 25_000 };

/** A comparison in each of its forms. Whatever profiles say is shown as text and nothing else. */
export const formatDiff: Readonly<Record<DiffFormat, (report: DiffReport, format: TextFormat) => string>> = {
  text: (report, format) => formatDocument(diffDocument(report), 'text', format),
  json: (report) => formatDiffAsJson(report),
  markdown: (report) =>
    `${diffMarker}\n\n${formatDocument(diffDocument(report, commentLimits), 'markdown', { level: 3, aligned: false })}`,
  annotations: ({ diff }) =>
    formatFindingsAsAnnotations(diff.findings, summarise(diff.findings, diff.profiles.length)),
};
