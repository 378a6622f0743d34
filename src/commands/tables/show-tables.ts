import { join, resolve } from 'node:path';
import { writeFiles } from '../../host/writing/write-files.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { formatTableAsHtml } from '../../tables/card/table-as-html.ts';
import { deriveTables, type TableRequest } from '../../tables/derive/derive-tables.ts';
import { formatRowExplanation } from '../../tables/derive/explain-row.ts';
import { findRow } from '../../tables/derive/row-address.ts';
import type { SpeedTable } from '../../tables/derive/speed-table.ts';
import { deriveFamily } from '../../tables/derive/table-family.ts';
import {
  formatFamilyAsCsv,
  formatFamilyAsJson,
  formatFamilyAsMarkdown,
  formatFamilyAsText,
} from '../../tables/write/family-texts.ts';
import { formatTableAsCsv } from '../../tables/write/table-as-csv.ts';
import { formatTableAsJson } from '../../tables/write/table-as-json.ts';
import { formatTableAsMarkdown } from '../../tables/write/table-as-markdown.ts';
import { formatTableAsText } from '../../tables/write/table-as-text.ts';
import { formatFamilyAsWorkbook, formatTableAsWorkbook } from '../../tables/write/table-as-workbook.ts';
import { type NamedFile, tableFiles } from '../../tables/write/table-files.ts';
import type { TextFormat } from '../../text/format-text.ts';
import type { OpenRegistry } from '../open-registry.ts';
import type { TableFormat } from '../shared-options.ts';
import { usage } from '../usage.ts';
import { filledFile, type TemplateFile } from './read-template-file.ts';

/** The forms that standard output can show. */
const tableWriters = {
  text: formatTableAsText,
  markdown: formatTableAsMarkdown,
  csv: formatTableAsCsv,
  json: formatTableAsJson,
  html: formatTableAsHtml,
  xlsx: formatTableAsWorkbook,
} as const satisfies Readonly<Record<TableFormat, unknown>>;

const familyWriters = {
  text: formatFamilyAsText,
  markdown: formatFamilyAsMarkdown,
  csv: formatFamilyAsCsv,
  json: formatFamilyAsJson,
  xlsx: formatFamilyAsWorkbook,
} as const satisfies Readonly<Record<Exclude<TableFormat, 'html'>, unknown>>;

/** How the tables of one pairing are shown. */
interface TableShow {
  readonly format: TableFormat;
  /** Row whose arithmetic is shown instead. */
  readonly explain?: string;
  readonly template: TemplateFile | null;
  /** Folder for files, as the user wrote it. */
  readonly out?: string;
  readonly cwd: string;
  readonly allTemperatures?: true;
  /** How text is printed on this terminal. */
  readonly terminal: TextFormat;
  /** Date by which the evidence is judged, YYYY-MM-DD. */
  readonly today: string;
}

/** What the command prints: a table (that as a workbook in bytes), the arithmetic of a row, or the names of the files that it wrote. */
export async function showTables(
  { registry, trust }: Pick<OpenRegistry, 'registry' | 'trust'>,
  request: TableRequest,
  show: TableShow,
): Promise<Result<string | Uint8Array, Problem>> {
  if (show.allTemperatures === true) return showFamily({ registry, trust }, request, show);
  const table = deriveTables(registry, request, { today: show.today });
  if (!table.ok) return table;
  const trusted = trust(show.today);
  if (!trusted.ok) return trusted;
  if (show.explain !== undefined) {
    const row = findRow(table.value, show.explain);
    return row.ok ? success(formatRowExplanation(registry, table.value, row.value)) : row;
  }
  if (show.out !== undefined) return writeOut(table.value, show.out, show);
  if (show.template === null) return success(shown(table.value, show));
  const filled = filledFile(show.template, table.value);
  return filled.ok ? success(filled.value[1]) : filled;
}

function shown(table: SpeedTable, { format, terminal }: TableShow): string | Uint8Array {
  return format === 'text' ? formatTableAsText(table, terminal) : tableWriters[format](table);
}

async function showFamily(
  { registry, trust }: Pick<OpenRegistry, 'registry' | 'trust'>,
  request: TableRequest,
  show: TableShow,
): Promise<Result<string | Uint8Array, Problem>> {
  const family = deriveFamily(registry, request, { today: show.today });
  if (!family.ok) return family;
  const trusted = trust(show.today);
  if (!trusted.ok) return trusted;
  const { format, out, cwd, terminal } = show;
  if (out !== undefined) {
    return writeInto(
      family.value.tables.flatMap((table) => tableFiles(table, true)),
      out,
      cwd,
    );
  }
  if (format === 'html') {
    return usage('A page holds one table', 'Name a folder for the pages of all temperatures with --out.');
  }
  return success(
    format === 'text' ? formatFamilyAsText(family.value, terminal) : familyWriters[format](family.value),
  );
}

async function writeOut(
  table: SpeedTable,
  out: string,
  { template, cwd }: TableShow,
): Promise<Result<string, Problem>> {
  const filled = template === null ? null : filledFile(template, table);
  if (filled !== null && !filled.ok) return filled;
  return writeInto(filled === null ? tableFiles(table) : [filled.value], out, cwd);
}

async function writeInto(
  files: readonly NamedFile[],
  out: string,
  cwd: string,
): Promise<Result<string, Problem>> {
  const names = await writeFiles(files, resolve(cwd, out), out, cwd);
  return names.ok ? success(names.value.map((name) => `${join(out, name)}\n`).join('')) : names;
}
