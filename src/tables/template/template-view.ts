import { tableCautions } from '../../knowledge/cautions.ts';
import { isPrinted } from '../../knowledge/feature.ts';
import { originSentence } from '../../knowledge/origin.ts';
import { formatQuirk } from '../../knowledge/quirk-words.ts';
import { alignedCells } from '../../text/text-grid.ts';
import { wordsOf } from '../../text/words.ts';
import { clean } from '../../units/round-to-step.ts';
import { settingText } from '../card/conditions-block.ts';
import type { ConditionRow } from '../derive/conditions/condition-row.ts';
import { rowAddress } from '../derive/row-address.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { cellOf, headingOf, tableColumns } from '../write/columns.ts';
import { conditionCell, conditionColumns } from '../write/condition-columns.ts';
import { tableTitle } from '../write/table-as-json.ts';
import { basisText } from '../write/words.ts';

/** What a template sees; a value that is null is written as nothing. */
export type TemplateValue = string | number | boolean | null | readonly string[] | readonly TemplateView[];

export interface TemplateView {
  readonly [name: string]: TemplateValue;
}

/** The table as templates see it; `templateVariables` says what each value is. */
export function templateView(table: SpeedTable): TemplateView {
  const [rowHeadings = '', ...rowLines] = speedLines(table.rows);
  const [conditionHeadings = '', ...conditionLines] = linesOfConditions(table.conditions);
  const rows = table.rows.map((row, index) => rowView(row, rowLines[index] ?? ''));
  return {
    title: tableTitle(table),
    machine: table.machine,
    nozzle: table.nozzle,
    nozzleDiameter: table.nozzleDiameter,
    filament: table.filament,
    policy: table.policy,
    printTemperature: table.temperatures.print,
    firstLayerNozzle: table.temperatures.firstLayer,
    chosenBy: table.largestFlow.chosenBy,
    flowLimit: clean(Number(table.largestFlow.limit.toPrecision(4))),
    flowBasis: basisText(table.largestFlow.basis, table.largestFlow.isSimulated ? ['simulated'] : []),
    largestFlow: table.largestFlow.usable,
    caps: placed(table.caps.map((cap) => ({ ...cap, featureWords: wordsOf(cap.feature) }))),
    rowHeadings,
    conditionHeadings,
    rows: placed(rows),
    features: grouped(rows, ['feature', 'featureWords']),
    beads: grouped(rows, ['layerHeight', 'lineWidth']),
    conditions: placed(table.conditions.map((row, index) => conditionView(row, conditionLines[index] ?? ''))),
    origin: originSentence(table.origin) ?? '',
    quirks: table.quirks.map(formatQuirk),
    warnings: table.warnings,
    cautions: tableCautions,
    inputs: placed(table.inputs.map(({ kind, id, version, digest }) => ({ kind, id, version, digest }))),
  };
}

function rowView(row: SpeedRow, line: string): TemplateView {
  return {
    ...Object.fromEntries(tableColumns.map((column) => [column.key, templateCell(row, column)])),
    featureWords: wordsOf(row.feature),
    flags: row.flags,
    nextBound: row.runnerUp?.name ?? '',
    nextSlack: row.runnerUp === null ? null : clean(Number((100 * row.runnerUp.slack).toPrecision(3))),
    address: rowAddress(row),
    line,
    isPrinted: isPrinted(row.feature),
  };
}

/** The cell of a row; null where a number is not known. */
function templateCell(row: SpeedRow, column: (typeof tableColumns)[number]): string | number | null {
  const cell = cellOf(row, column);
  return column.unit !== null && cell === '' ? null : cell;
}

function conditionView(row: ConditionRow, line: string): TemplateView {
  return {
    ...Object.fromEntries(conditionColumns.map((column) => [column.key, conditionCell(row, column)])),
    conditionWords: wordsOf(row.name),
    flags: row.flags,
    setting: settingText(row),
    hasWindow: row.window !== null,
    isStated: row.isStated,
    line,
  };
}

/** Rows that share the values of some keys, in the order of their first row. */
function grouped(rows: readonly TemplateView[], keys: readonly string[]): TemplateView[] {
  const groups = new Map<string, TemplateView[]>();
  for (const row of rows) {
    const key = JSON.stringify(keys.map((name) => row[name]));
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return placed(
    [...groups.values()].map((group) => ({
      ...Object.fromEntries(keys.map((name) => [name, group[0]?.[name] ?? null])),
      rows: placed(group),
    })),
  );
}

function placed(items: readonly TemplateView[]): TemplateView[] {
  return items.map((item, index) => ({
    ...item,
    isFirst: index === 0,
    isLast: index === items.length - 1,
  }));
}

function speedLines(rows: readonly SpeedRow[]): string[] {
  return lines(
    tableColumns.map((column) => ({ heading: headingOf(column), isNumber: column.unit !== null })),
    rows.map((row) => tableColumns.map((column) => cellOf(row, column))),
  );
}

function linesOfConditions(rows: readonly ConditionRow[]): string[] {
  const columns = conditionColumns.filter(({ key }) => key !== 'restsOn' && key !== 'note');
  return lines(
    columns.map(({ key, unit, isNumber }) => ({
      heading: unit === null ? key : `${key} [${unit}]`,
      isNumber,
    })),
    rows.map((row) => columns.map((column) => conditionCell(row, column) ?? '')),
  );
}

function lines(
  columns: readonly { readonly heading: string; readonly isNumber: boolean }[],
  cells: readonly (readonly (string | number)[])[],
): string[] {
  return alignedCells(
    columns.map(({ heading, isNumber }) => ({ heading, align: isNumber ? 'right' : 'left' })),
    cells.map((row) => row.map(String)),
  ).map((row) => row.join('  ').trimEnd());
}
