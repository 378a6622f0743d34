import { escapeMarkdown, markdownList, markdownTable } from '../../text/markdown.ts';
import type { GridColumn } from '../../text/text-grid.ts';
import { type BenchPlan, planHeading } from './bench-plan.ts';

/** Wide enough to write a reading by hand. */
const emptyCell = ' '.repeat(10);

/** A plan as a bench sheet to print and fill in by hand. */
export function formatPlanAsMarkdown(plan: BenchPlan): string {
  const parts = [
    `# ${escapeMarkdown(plan.title)}`,
    `Planned ${plan.date} for the trial ${escapeMarkdown(plan.trial.id)}.`,
    'Run by: ____________  On: ____________  Batch: ____________  Room: ______ °C, ______ % humidity',
    ...plan.sections.flatMap(({ heading, items }) => [`## ${heading}`, markdownList(items)]),
    '## Readings',
    sheet(plan),
    'Stopped or ground at: ____________  Because of: ________________________',
    '## Cautions',
    markdownList(plan.cautions),
  ];
  return `${parts.join('\n\n')}\n`;
}

function sheet(plan: BenchPlan): string {
  const repeats = Array.from({ length: plan.repeats }, (_, index) => index + 1);
  const toRead = repeats.flatMap((number) =>
    plan.read.map((column) => `${planHeading(column)}${plan.repeats > 1 ? ` ${number}` : ''}`),
  );
  const headings = [...plan.given.map(planHeading), ...plan.hints, ...toRead, 'seen'];
  const columns = headings.map((heading): GridColumn => ({ heading, align: 'right' }));
  const cells = plan.rows.map(({ given, hints }) => [
    ...given.map(String),
    ...hints,
    ...[...toRead, 'seen'].map(() => emptyCell),
  ]);
  return markdownTable(columns, cells);
}
