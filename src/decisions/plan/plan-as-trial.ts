import { formatCsv } from '../../text/csv.ts';
import { type BenchPlan, planHeading, plannedReadings } from './bench-plan.ts';

/** Where the readings of a planned trial go: into the trial itself, or into a CSV file beside it. */
export type ReadingsPlace = { readonly in: 'trial' } | { readonly in: 'file'; readonly name: string };

/** A trial file for the registry, ready but for what the bench gives. */
export function formatPlanAsTrial(plan: BenchPlan, place: ReadingsPlace): string {
  const { id, lines, afterwards } = plan.trial;
  return `${[
    '# yaml-language-server: $schema=../../../schema/trial.schema.json',
    `# Belongs to trials/${plan.date.slice(0, 4)}/${id}.yaml of the registry. Fill in what was really set and read, then`,
    `# \`meltbounds check\` and \`meltbounds reduce ${id}\`.`,
    'kind: trial',
    `id: ${id}`,
    `method: ${plan.method}`,
    'origin: bench',
    `date: '${plan.date}'`,
    ...lines,
    'observations:',
    ...(place.in === 'file' ? [`  file: ${place.name}`] : inlineRows(plan)),
    ...afterwards.map((line) => `# ${line}`),
  ].join('\n')}\n`;
}

function inlineRows(plan: BenchPlan): string[] {
  const columns = [...plan.given, ...plan.read]
    .map(({ name, unit }) => `${name}: ${yamlText(unit)}`)
    .join(', ');
  const read = plan.read.map(({ name }) => name).join(', ');
  return [
    `  columns: {${columns}}`,
    plan.given.length === 0
      ? `  # Write ${read} into the brackets of each row.`
      : `  # Write ${read} behind the last comma of each row.`,
    '  rows:',
    ...plannedReadings(plan).map((given) =>
      given.length === 0 ? '    - []' : `    - [${given.join(', ')}, ]`,
    ),
  ];
}

/** Units with brackets or braces would be read as lists and maps. */
function yamlText(unit: string): string {
  return /[[\]{}]/.test(unit) ? `'${unit}'` : unit;
}

/** The bench sheet (RFC 4180) that `reduce` reads once the empty cells hold readings; one row a reading. */
export function formatPlanAsCsv(plan: BenchPlan): string {
  const header = [...plan.given, ...plan.read].map(planHeading);
  const rows = plannedReadings(plan).map((given) => [...given, ...plan.read.map(() => '')]);
  return formatCsv([header, ...rows]);
}
