import type { ConditionRow } from '../../tables/derive/conditions/condition-row.ts';
import { isSameValue } from './same-value.ts';
import type { TableName } from './table-name.ts';

/** A setting of a table that is not what it was: a temperature, the cooling, the drying, what a spool lasts. */
export interface SettingMove extends TableName {
  readonly setting: ConditionRow['name'];
  /** Unit of both windows. */
  readonly unit: ConditionRow['unit'];
  /** Null where there was none, or none that is safe. */
  readonly base: ConditionRow['window'];
  readonly head: ConditionRow['window'];
}

/** Settings that differ between two tables of one name; those that hold at one flow only are left to the cells. */
export function settingMoves(
  name: TableName,
  base: readonly ConditionRow[],
  head: readonly ConditionRow[],
): SettingMove[] {
  const [before, after] = [withoutFlow(base), withoutFlow(head)];
  const settings = new Map([...before, ...after]);
  return [...settings].flatMap(([setting, { unit }]) => {
    const [old, now] = [before.get(setting)?.window ?? null, after.get(setting)?.window ?? null];
    return isSameValue(old, now) ? [] : [{ ...name, setting, unit, base: old, head: now }];
  });
}

function withoutFlow(rows: readonly ConditionRow[]): ReadonlyMap<ConditionRow['name'], ConditionRow> {
  return new Map(rows.filter(({ flow }) => flow === null).map((row) => [row.name, row]));
}
