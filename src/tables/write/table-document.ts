import { tableCautions } from '../../knowledge/cautions.ts';
import { type Column, cautions, type Document, list, section, table, warnings } from '../../text/document.ts';
import { styled } from '../../text/inline.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import type { ConditionRow } from '../derive/conditions/condition-row.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { inputLine } from '../derive/table-inputs.ts';
import { cellOf, tableColumns } from './columns.ts';
import { type ConditionColumn, conditionCell, conditionColumns } from './condition-columns.ts';
import { tableTitle } from './table-as-json.ts';

/** A table for people: every row and condition, what makes them less certain, cautions, and what it was derived from. */
export function tableDocument(speeds: SpeedTable): Document {
  return {
    title: tableTitle(speeds),
    blocks: [
      table(
        tableColumns.map(({ key, unit }) => columnOf(key, unit, unit !== null)),
        speeds.rows.map((row) => tableColumns.map((column) => cellOf(row, column))),
      ),
      section('Temperatures, cooling, drying, spool', [
        table(
          conditionColumns.map(({ key, unit, isNumber }) => columnOf(key, unit, isNumber)),
          speeds.conditions.map((row) => conditionColumns.map((column) => printedCell(row, column))),
        ),
        ...(speeds.warnings.length > 0 ? [warnings(speeds.warnings)] : []),
        cautions(tableCautions),
      ]),
      section('Derived from', [list(speeds.inputs.map((input) => [styled('plain', inputLine(input))]))]),
    ],
  };
}

/** The unit of a condition stands in a column of its own. */
function printedCell(row: ConditionRow, column: ConditionColumn): string | number {
  const cell = conditionCell(row, column) ?? '';
  return column.key === 'unit' ? printedUnit(String(cell)) : cell;
}

function columnOf(heading: string, unit: string | null, isNumber: boolean): Column {
  return { heading, align: isNumber ? 'right' : 'left', ...(unit !== null && { unit }) };
}
