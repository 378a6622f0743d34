import { annotationsReport } from '../findings/annotations-report.ts';
import { summarise } from '../findings/summary.ts';
import type { DiffReport } from './diff-report.ts';
import { jsonDiff } from './json-diff.ts';
import { markdownDiff } from './markdown-diff.ts';
import { textDiff } from './text-diff.ts';

export const diffFormats = ['text', 'json', 'markdown', 'annotations'] as const;

export type DiffFormat = (typeof diffFormats)[number];

export const writeDiff: Readonly<Record<DiffFormat, (report: DiffReport) => string>> = {
  text: textDiff,
  json: jsonDiff,
  markdown: markdownDiff,
  annotations: ({ diff }) => annotationsReport(diff.findings, summarise(diff.findings, diff.profiles.length)),
};
