import { tableCautions } from './cautions.ts';
import { cellOf, headingOf, tableColumns } from './columns.ts';
import { conditionCell, conditionColumns } from './condition-columns.ts';
import type { ConditionRow } from './condition-row.ts';
import type { SpeedRow, SpeedTable } from './speed-table.ts';
import { alignedCells, type GridColumn } from './text-grid.ts';
import { tableTitle } from './write-json.ts';

/** The table as Markdown that also lines up as plain text. */
export function writeMarkdown(table: SpeedTable): string {
  const sections = [
    `# ${escapeMarkdown(tableTitle(table))}`,
    speedGrid(table.rows),
    '## Temperatures, cooling, drying, spool',
    conditionGrid(table.conditions),
    ...(table.warnings.length > 0 ? [list(table.warnings)] : []),
    list(tableCautions),
    '## Derived from',
    list(
      table.inputs.map(
        ({ kind, id, version, digest }) =>
          `${kind} ${id}${version === null ? '' : ` ${version}`}, sha256 ${digest}`,
      ),
    ),
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
  const columns = head.map(
    ({ heading, isNumber }): GridColumn => ({ heading, align: isNumber ? 'right' : 'left' }),
  );
  const cells = rows.map((row) => row.map((cell) => escapeMarkdown(String(cell))));
  const [heading = [], ...body] = alignedCells(columns, cells);
  const rule = heading.map((text, index) => {
    const dashes = '-'.repeat(Math.max(3, text.length) - (columns[index]?.align === 'right' ? 1 : 0));
    return columns[index]?.align === 'right' ? `${dashes}:` : dashes;
  });
  return [heading, rule, ...body].map((row) => `| ${row.join(' | ')} |`).join('\n');
}

function list(items: readonly string[]): string {
  return items.map((item) => `- ${escapeMarkdown(item)}`).join('\n');
}

/** Text in which Markdown and HTML see nothing but text. */
export function escapeMarkdown(text: string): string {
  return text.replace(/[\\`*_[\]<>|#~&]/g, (character) => `\\${character}`);
}
