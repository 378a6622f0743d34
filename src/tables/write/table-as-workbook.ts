import { tableCautions } from '../../knowledge/cautions.ts';
import { originSentence } from '../../knowledge/origin.ts';
import { formatQuirk } from '../../knowledge/quirk-words.ts';
import { formatWorkbook, type Sheet } from '../../text/workbook.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import type { TableFamily } from '../derive/table-family.ts';
import { inputText } from '../derive/table-inputs.ts';
import { conditionCell, conditionColumns, conditionHeading } from './condition-columns.ts';
import { csvHeader, csvRows } from './table-as-csv.ts';
import { tableTitle } from './table-as-json.ts';

/**
 * The table as a workbook (.xlsx): the speeds, what to set besides, and what to know about them, a sheet each. The first one says by
 * its name where readings are simulated or a profile is invented.
 */
export function formatTableAsWorkbook(table: SpeedTable): Uint8Array {
  return formatWorkbook([speedSheet([table], 'Speeds'), conditionSheet([table]), aboutSheet([table])]);
}

/** The tables of all temperatures as one workbook; the first column names the temperature that a row's table is for. */
export function formatFamilyAsWorkbook({ tables }: TableFamily): Uint8Array {
  return formatWorkbook([speedSheet(tables, 'Speeds'), conditionSheet(tables), aboutSheet(tables)]);
}

const temperatureHeading = 'tableTemperature [Cel]';

function speedSheet(tables: readonly SpeedTable[], name: string): Sheet {
  return {
    name: `${name}${originMark(tables)}`,
    head: withTemperature(tables, temperatureHeading, csvHeader),
    rows: tables.flatMap((table) =>
      csvRows(table).map((row) => withTemperature(tables, table.temperatures.print, row)),
    ),
  };
}

function conditionSheet(tables: readonly SpeedTable[]): Sheet {
  return {
    name: 'Conditions',
    head: withTemperature(tables, temperatureHeading, conditionColumns.map(conditionHeading)),
    rows: tables.flatMap((table) =>
      table.conditions.map((row) =>
        withTemperature(
          tables,
          table.temperatures.print,
          conditionColumns.map((column) => conditionCell(row, column) ?? ''),
        ),
      ),
    ),
    widest: 40,
  };
}

/** Cells with that of the temperature before them, where there are tables of several. */
function withTemperature<Cell>(tables: readonly SpeedTable[], first: Cell, cells: readonly Cell[]): Cell[] {
  return tables.length > 1 ? [first, ...cells] : [...cells];
}

function aboutSheet(tables: readonly SpeedTable[]): Sheet {
  const several = (kind: string, texts: readonly string[]) =>
    [...new Set(texts)].map((text): [string, string] => [kind, text]);
  const origins = tables.flatMap(({ origin }) => originSentence(origin) ?? []);
  return {
    name: 'About',
    head: ['what', 'text'],
    rows: [
      ...several('table', tables.map(tableTitle)),
      ...several('origin', origins),
      ...several('caution', tableCautions),
      ...several(
        'quirk',
        tables.flatMap(({ quirks }) => quirks.map(formatQuirk)),
      ),
      ...several(
        'warning',
        tables.flatMap(({ warnings }) => warnings),
      ),
      ...several(
        'derived from',
        tables.flatMap(({ inputs }) => inputs.map(inputText)),
      ),
    ],
    widest: 100,
  };
}

function originMark(tables: readonly SpeedTable[]): string {
  const words = (['simulated', 'invented'] as const).filter((word) =>
    tables.some(({ rows }) => rows.some(({ flags }) => flags.includes(word))),
  );
  return words.length === 0 ? '' : ` (${words.join(', ')})`;
}
