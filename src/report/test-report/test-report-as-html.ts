import { pageAround } from '../../tables/card/html-page.ts';
import { formatHtml } from '../../text/format-html.ts';
import { documentInPrint } from '../../units/in-print.ts';
import type { TestReport } from './test-report.ts';
import { testReportDocument } from './test-report-document.ts';

/** Identity and number at the foot of every page of paper (CSS Paged Media Level 3, margin boxes). */
function footStyle(identity: string): string {
  const safe = identity.replace(/[^A-Za-z0-9 .,-]/g, '');
  return `@page { margin: 10mm 10mm 16mm; @bottom-left { content: "${safe}"; font-size: 8pt; } @bottom-right { content: "page " counter(page) " of " counter(pages); font-size: 8pt; } }`;
}

/** The report as one HTML page that needs nothing else, and that prints with its identity on every page. */
export function formatTestReportAsHtml(report: TestReport): string {
  const document = documentInPrint(testReportDocument(report));
  return pageAround(`Test report ${report.trial.id}`, formatHtml(document), footStyle(report.identity));
}
