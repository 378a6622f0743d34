import { type Column, type Table, table } from '../../text/document.ts';
import { headingWords, wordsOf } from '../../text/words.ts';
import type { Range } from '../../units/canonical.ts';
import type { ConditionRow } from '../derive/conditions/condition-row.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { conditionCell, conditionColumns } from '../write/condition-columns.ts';
import { withUnit } from '../write/words.ts';

const columns: readonly Column[] = [
  { heading: 'What', align: 'left', namesRow: true },
  { heading: 'Setting', align: 'right' },
  { heading: 'At a flow of', unit: 'mm3/s', align: 'right' },
  { heading: 'Rests on', align: 'left' },
  { heading: 'To mind', align: 'left' },
];

/** Temperatures, cooling, drying and spool life, a row each. */
export function conditionsBlock({ conditions }: SpeedTable): Table {
  const rows = conditions.map((row) => [
    headingWords(row.name),
    settingText(row),
    row.flow ?? '',
    restsOnText(row),
    row.note,
  ]);
  return table(columns, rows, { caption: 'What to set besides the speeds', name: 'conditions' });
}

/** `230 °C`, `70 to 85 °C`, that none is safe, or that none is stated, with what is published of the family. */
export function settingText({ window, isStated, ofFamily, unit }: ConditionRow): string {
  if (window !== null) return rangeText(window, unit);
  if (isStated) return 'none is safe';
  return ofFamily === null
    ? 'not stated'
    : `not stated (${ofFamily.family} as published: ${rangeText(ofFamily, unit)})`;
}

function rangeText({ low, high }: Range, unit: string): string {
  return low === high ? withUnit(low, unit) : `${low} to ${withUnit(high, unit)}`;
}

/** What the setting rests on, with the flags that the page explains: `measured (simulated, stale): trial …`. */
function restsOnText(row: ConditionRow): string {
  const cell = (key: 'basis' | 'restsOn') => {
    const column = conditionColumns.find((each) => each.key === key);
    return column === undefined ? null : conditionCell(row, column);
  };
  const restsOn = cell('restsOn');
  if (row.sourcedValues.length === 0) return '';
  const basis = cell('basis') ?? 'house rule';
  // That profiles are invented stands at the head of the page.
  const flags = row.flags.filter((flag) => flag !== 'invented').map(wordsOf);
  const flagged = flags.length === 0 ? basis : `${basis} (${flags.join(', ')})`;
  return restsOn === null ? `${flagged}` : `${flagged}: ${restsOn}`;
}
