import { findProfile } from '../../registry/find-profile.ts';
import type { ReportDetails } from '../../report/test-report/report-details.ts';
import { testReport } from '../../report/test-report/test-report.ts';
import { formatTestReportAsHtml } from '../../report/test-report/test-report-as-html.ts';
import { testReportDocument } from '../../report/test-report/test-report-document.ts';
import { formatDocument } from '../../units/format-document.ts';
import { inPrint } from '../../units/in-print.ts';
import { type CliContext, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { openRegistry, type RegistryOptions } from '../open-registry.ts';

export interface ReportOptions extends RegistryOptions, ReportDetails {
  readonly format: 'html' | 'text' | 'markdown';
  readonly policy?: string;
  readonly today?: string;
}

export async function runReport(
  trial: string,
  options: ReportOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trust } = opened.value;
  const found = findProfile(registry, 'trial', trial);
  if (!found.ok) return exit.cannotRun(found.error);
  const { format, policy, today = cli.today() } = options;
  const report = testReport(registry, {
    ...{ trial, today, details: options },
    ...(policy !== undefined && { policy }),
  });
  if (!report.ok) {
    if (!('length' in report.error)) return exit.cannotRun(report.error);
    for (const { message, help } of report.error) cli.err(`${inPrint(`${trial}: ${message}; ${help}`)}\n`);
    return exit.with(exitStatus.findings);
  }
  const trusted = trust(today);
  if (!trusted.ok) return exit.cannotRun(trusted.error);
  cli.out(
    format === 'html'
      ? formatTestReportAsHtml(report.value)
      : formatDocument(testReportDocument(report.value), format, cli),
  );
}
