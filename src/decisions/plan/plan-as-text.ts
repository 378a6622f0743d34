import { alignedCells, type GridColumn } from '../../text/text-grid.ts';
import { type BenchPlan, planHeading } from './bench-plan.ts';

/** A plan for a terminal. */
export function formatPlanAsText(plan: BenchPlan): string {
  const sections = plan.sections.flatMap(({ heading, items }) => [
    '',
    heading,
    ...items.map((item) => `  - ${item}`),
  ]);
  const lines = [
    plan.title,
    ...sections,
    '',
    `Readings: ${plan.read.map(planHeading).join(', ')}, ${plan.repeats} a row`,
    ...grid(plan).map((row) => `  ${row.join('  ').trimEnd()}`),
    '',
    ...plan.cautions.map((caution) => `Caution: ${caution}`),
  ];
  return `${lines.join('\n')}\n`;
}

function grid(plan: BenchPlan): string[][] {
  const headings = [...plan.given.map(planHeading), ...plan.hints];
  const columns = headings.map((heading): GridColumn => ({ heading, align: 'right' }));
  return alignedCells(
    columns,
    plan.rows.map(({ given, hints }) => [...given.map(String), ...hints]),
  );
}
