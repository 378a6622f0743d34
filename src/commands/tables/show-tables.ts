import { join, resolve } from 'node:path';
import { writeFiles } from '../../host/write-files.ts';
import type { PairingRequest } from '../../knowledge/pairing.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { formatTableAsHtml } from '../../tables/card/table-as-html.ts';
import { deriveTables } from '../../tables/derive/derive-tables.ts';
import { formatRowExplanation } from '../../tables/derive/explain-row.ts';
import { findRow } from '../../tables/derive/row-address.ts';
import type { SpeedTable } from '../../tables/derive/speed-table.ts';
import { formatTableAsCsv } from '../../tables/write/table-as-csv.ts';
import { formatTableAsJson } from '../../tables/write/table-as-json.ts';
import { formatTableAsMarkdown } from '../../tables/write/table-as-markdown.ts';
import { tableFiles } from '../../tables/write/table-files.ts';
import type { OpenRegistry } from '../open-registry.ts';
import type { TableFormat } from '../shared-options.ts';
import { filledFile, type TemplateFile } from './read-template-file.ts';

/** The forms that standard output can show. */
const tableWriters = {
  markdown: formatTableAsMarkdown,
  csv: formatTableAsCsv,
  json: formatTableAsJson,
  html: formatTableAsHtml,
} as const satisfies Readonly<Record<TableFormat, unknown>>;

/** How the tables of one pairing are shown. */
interface TableShow {
  readonly format: TableFormat;
  /** Row whose arithmetic is shown instead. */
  readonly explain?: string;
  readonly template: TemplateFile | null;
  /** Folder for files, as the user wrote it. */
  readonly out?: string;
  readonly cwd: string;
  /** Date by which the evidence is judged, YYYY-MM-DD. */
  readonly today: string;
}

/** What the command prints: a table, the arithmetic of a row, or the names of the files that it wrote. */
export async function showTables(
  { registry, trust }: OpenRegistry,
  request: PairingRequest,
  show: TableShow,
): Promise<Result<string, Problem>> {
  const table = deriveTables(registry, request, { today: show.today });
  if (!table.ok) return table;
  const trusted = trust(show.today);
  if (!trusted.ok) return trusted;
  if (show.explain !== undefined) {
    const row = findRow(table.value, show.explain);
    return row.ok ? success(formatRowExplanation(registry, table.value, row.value)) : row;
  }
  if (show.out !== undefined) return writeOut(table.value, show.out, show);
  if (show.template === null) return success(tableWriters[show.format](table.value));
  const filled = filledFile(show.template, table.value);
  return filled.ok ? success(filled.value[1]) : filled;
}

async function writeOut(
  table: SpeedTable,
  out: string,
  { template, cwd }: TableShow,
): Promise<Result<string, Problem>> {
  const filled = template === null ? null : filledFile(template, table);
  if (filled !== null && !filled.ok) return filled;
  const files = filled === null ? tableFiles(table) : [filled.value];
  const names = await writeFiles(files, resolve(cwd, out), out);
  return names.ok ? success(names.value.map((name) => `${join(out, name)}\n`).join('')) : names;
}
