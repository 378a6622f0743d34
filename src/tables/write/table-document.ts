import { tableCautions } from '../../knowledge/cautions.ts';
import { originBlocks } from '../../knowledge/origin.ts';
import {
  type Column,
  cautions,
  type Document,
  facts,
  list,
  section,
  table,
  warnings,
} from '../../text/document.ts';
import { styled } from '../../text/inline.ts';
import { settingText } from '../card/conditions-block.ts';
import type { ConditionRow } from '../derive/conditions/condition-row.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { inputLine } from '../derive/table-inputs.ts';
import { cellOf, tableColumns } from './columns.ts';
import { conditionCell, conditionColumns } from './condition-columns.ts';
import { capText, groundFacts, largestFlowText, quirkBlocks, temperaturesText } from './head-text.ts';
import { tableTitle } from './table-as-json.ts';
import { basisText } from './words.ts';

/** A table for people: every row and condition, what makes them less certain, cautions, and what it was derived from. */
export function tableDocument(speeds: SpeedTable): Document {
  return {
    title: tableTitle(speeds),
    answer: `${temperaturesText(speeds)} ${largestFlowText(speeds)}`,
    blocks: [
      ...originBlocks(speeds.origin),
      facts(...groundFacts(speeds)),
      table(
        speedColumns.map(({ key, unit }) => columnOf(key, unit, unit !== null)),
        rowsOnce(speeds.rows).map((row) => speedColumns.map((column) => printedCell(row, column))),
      ),
      ...(speeds.caps.length === 0 ? [] : [section('House caps', [list(speeds.caps.map(capText))])]),
      ...quirkBlocks(speeds.quirks),
      section('Temperatures, cooling, drying, retraction, spool', [
        table(
          [
            ...['condition', 'setting', 'basis', 'flags', 'rests on', 'note'].map((heading) =>
              columnOf(heading, null, false),
            ),
          ],
          speeds.conditions.map(conditionCells),
        ),
        ...(speeds.warnings.length > 0 ? [warnings(speeds.warnings)] : []),
        cautions(tableCautions),
      ]),
      section('Derived from', [list(speeds.inputs.map((input) => [styled('plain', inputLine(input))]))]),
    ],
  };
}

/** The nozzle temperature stands in the head, once. */
const speedColumns = tableColumns.filter(({ key }) => key !== 'nozzleTemperature');

/** Travel moves do not depend on the bead: of their rows the first. */
function rowsOnce(rows: readonly SpeedRow[]): readonly SpeedRow[] {
  const travel = rows.find(({ feature }) => feature === 'travel');
  return rows.filter((row) => row.feature !== 'travel' || row === travel);
}

function printedCell(row: SpeedRow, column: (typeof tableColumns)[number]): string | number {
  const isOfBead = column.key === 'layerHeight' || column.key === 'lineWidth';
  if (isOfBead && row.feature === 'travel') return '';
  return column.key === 'basis' && row.basis !== null ? basisText(row.basis, row.flags) : cellOf(row, column);
}

function conditionCells(row: ConditionRow): (string | number)[] {
  const texts = (['basis', 'restsOn'] as const).map((key) => {
    const column = conditionColumns.find((each) => each.key === key);
    return column === undefined ? '' : (conditionCell(row, column) ?? '');
  });
  const [basis = '', restsOn = ''] = texts;
  return [row.name, settingText(row), basis, row.flags.join(' '), restsOn, row.note];
}

function columnOf(heading: string, unit: string | null, isNumber: boolean): Column {
  return { heading, align: isNumber ? 'right' : 'left', ...(unit !== null && { unit }) };
}
