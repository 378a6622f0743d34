import { tableCautions } from '../../knowledge/cautions.ts';
import { escapeMarkdown, markdownList, markdownTable } from '../../text/markdown.ts';
import type { GridColumn } from '../../text/text-grid.ts';
import type { ConditionRow } from '../derive/condition-row.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { inputLine } from '../derive/table-inputs.ts';
import { cellOf, headingOf, tableColumns } from './columns.ts';
import { conditionCell, conditionColumns } from './condition-columns.ts';
import { tableTitle } from './table-as-json.ts';

/** The table as Markdown that also lines up as plain text. */
export function formatTableAsMarkdown(table: SpeedTable): string {
  const sections = [
    `# ${escapeMarkdown(tableTitle(table))}`,
    speedGrid(table.rows),
    '## Temperatures, cooling, drying, spool',
    conditionGrid(table.conditions),
    ...(table.warnings.length > 0 ? [markdownList(table.warnings)] : []),
    markdownList(tableCautions),
    '## Derived from',
    markdownList(table.inputs.map(inputLine)),
  ];
  return `${sections.join('\n\n')}\n`;
}

function speedGrid(rows: readonly SpeedRow[]): string {
  const columns = tableColumns.map((column) => ({
    heading: headingOf(column),
    isNumber: column.unit !== null,
  }));
  return grid(
    columns,
    rows.map((row) => tableColumns.map((column) => cellOf(row, column))),
  );
}

function conditionGrid(rows: readonly ConditionRow[]): string {
  const columns = conditionColumns.map(({ key, unit, isNumber }) => ({
    heading: unit === null ? key : `${key} [${unit}]`,
    isNumber,
  }));
  return grid(
    columns,
    rows.map((row) => conditionColumns.map((column) => conditionCell(row, column) ?? '')),
  );
}

function grid(
  head: readonly { readonly heading: string; readonly isNumber: boolean }[],
  rows: readonly (readonly (string | number)[])[],
): string {
  return markdownTable(
    head.map(({ heading, isNumber }): GridColumn => ({ heading, align: isNumber ? 'right' : 'left' })),
    rows.map((row) => row.map(String)),
  );
}
