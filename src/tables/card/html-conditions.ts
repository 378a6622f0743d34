import { element, type Markup } from '../../text/html-element.ts';
import { headingWords, wordsOf } from '../../text/words.ts';
import { inPrint } from '../../units/in-print.ts';
import type { ConditionRow } from '../derive/condition-row.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { conditionCell, conditionColumns } from '../write/condition-columns.ts';
import { withUnit } from '../write/words.ts';
import { captionedTable, cell, type HtmlColumn, headingRow, rowHeading } from './html-table.ts';

const columns: readonly HtmlColumn[] = [
  { heading: 'What', unit: null, isNumber: false },
  { heading: 'Setting', unit: null, isNumber: true },
  { heading: 'At a flow of', unit: 'mm3/s', isNumber: true },
  { heading: 'Rests on', unit: null, isNumber: false },
  { heading: 'To mind', unit: null, isNumber: false },
];

/** Temperatures, cooling, drying and spool life, a row each. */
export function conditionsTable({ conditions }: SpeedTable): Markup {
  const rows = conditions.map((row) =>
    element('tr', {}, [
      rowHeading(headingWords(row.name)),
      element('td', { class: 'number' }, [settingText(row)]),
      cell(row.flow ?? ''),
      cell(restsOnText(row)),
      cell(inPrint(row.note)),
    ]),
  );
  return captionedTable(
    'What to set besides the speeds',
    'conditions',
    [headingRow(columns)],
    [element('tbody', {}, rows)],
  );
}

/** `230 °C`, `70 to 85 °C`, or that there is none. */
export function settingText({ window, unit }: ConditionRow): string {
  if (window === null) return 'none is safe';
  const { low, high } = window;
  return low === high ? withUnit(low, unit) : `${low} to ${withUnit(high, unit)}`;
}

/** What the setting rests on, with the flags that the page explains: `measured (stale): trial …`. */
function restsOnText(row: ConditionRow): string {
  const [basis, flags, restsOn] = (['basis', 'flags', 'restsOn'] as const).map((key) => {
    const column = conditionColumns.find((each) => each.key === key);
    return column === undefined ? null : conditionCell(row, column);
  });
  const flagged = flags === null ? basis : `${basis} (${row.flags.map(wordsOf).join(', ')})`;
  return [flagged, restsOn].filter((part) => part !== null).join(': ');
}
