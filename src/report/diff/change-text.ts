import type { CellMove } from '../../decisions/diff/diff-tables.ts';
import type { ChangeSide, ProfileChange } from '../../decisions/diff/profile-changes.ts';
import type { SettingMove } from '../../decisions/diff/setting-moves.ts';
import type { TableName } from '../../decisions/diff/table-name.ts';
import { basisWords } from '../../knowledge/origin.ts';
import { isObject } from '../../registry/shape.ts';
import type { Conditions } from '../../registry/statement.ts';
import type { SpeedRow } from '../../tables/derive/speed-table.ts';
import { wordsOf } from '../../text/words.ts';
import { type Dimension, dimensionInfo } from '../../units/dimension.ts';
import { formatNumber, formatQuantity, formatRange } from '../../units/format-quantity.ts';

/** Digits of a value in a report. */
const digits = 6;

/** `meltFlow (brackwater/lantern, hs-0.6, 230 Cel)`: what has changed, and where it holds. */
export function changeName({ name, conditions }: ProfileChange): string {
  const texts = conditionTexts(conditions);
  return texts.length === 0 ? name : `${name} (${texts.join(', ')})`;
}

function conditionTexts(conditions: Conditions): string[] {
  const { machine, nozzle, filament, polymer, batch, nozzleTemperature, layerHeight, acceleration } =
    conditions;
  const words = [machine, nozzle, filament, polymer].filter((word) => word !== undefined);
  return [
    ...words,
    ...(nozzleTemperature === undefined ? [] : [quantity(nozzleTemperature, 'temperature')]),
    ...(layerHeight === undefined ? [] : [`layer ${quantity(layerHeight, 'length')}`]),
    ...(acceleration === undefined ? [] : [quantity(acceleration, 'acceleration')]),
    ...(batch === undefined ? [] : [`batch ${batch}`]),
  ];
}

/** Value of a side with its unit: `43 mm3/s`, `190..235 Cel`; a dash where there is none. */
export function sideText(side: ChangeSide | null, dimension: Dimension | null): string {
  if (side === null) return '-';
  const { value } = side;
  if (dimension !== null && typeof value === 'number') return quantity(value, dimension);
  if (dimension !== null && isObject(value)) {
    const { low, high, amount, currency } = value;
    if (typeof low === 'number' && typeof high === 'number') {
      return formatRange(low, high, dimension, formatOf(dimension, low));
    }
    if (typeof amount === 'number') return `${formatNumber(amount)} ${String(currency)}`;
  }
  if (isObject(value)) return objectText(value);
  return typeof value === 'string' ? value : JSON.stringify(value);
}

/** What an item of a list holds, other than the id that its name ends in: `diameter 0.4, material brass`. */
function objectText({ id: _, ...rest }: Readonly<Record<string, unknown>>): string {
  const simple = Object.entries(rest).filter(([, value]) => typeof value !== 'object');
  return simple.map(([key, value]) => `${key} ${String(value)}`).join(', ');
}

function quantity(value: number, dimension: Dimension): string {
  return formatQuantity(value, dimension, formatOf(dimension, value));
}

/** Times of an hour or more are shown in hours, all else in the unit of the trade. */
function formatOf(dimension: Dimension, value: number): { unit: string; significantDigits: number } {
  const isLong = dimension === 'time' && Math.abs(value) >= 3600;
  return { unit: isLong ? 'h' : dimensionInfo[dimension].usualUnit, significantDigits: digits };
}

/**
 * How far a number has moved: `-12.5 %`, for temperatures `-10 K`, since a share of degrees Celsius says nothing; for
 * ranges at each end that has moved. Empty where it is no number, or was 0.
 */
export function moveText({ dimension, base, head }: ProfileChange): string {
  if (dimension === null || base === null || head === null) return '';
  const [before, after] = [endsOf(base.value), endsOf(head.value)];
  const ends = before.map((value, index) => moved(value, after[index] ?? value, dimension));
  const texts = ends.filter((text) => text !== '');
  return before.length === 2 && texts.length === 1
    ? `${ends[0] === '' ? 'upper' : 'lower'} end ${texts[0]}`
    : texts.join(', ');
}

function endsOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return isObject(value) && typeof value.low === 'number' && typeof value.high === 'number'
    ? [value.low, value.high]
    : [];
}

function moved(base: number, head: number, dimension: Dimension): string {
  if (base === head) return '';
  const difference = head - base;
  if (dimension === 'temperature') return `${signed(difference)} K`;
  return base === 0 ? '' : `${percentText(difference / base)}`;
}

/** A share as percent with its sign and one decimal: `+7.5 %`. */
function percentText(share: number): string {
  return `${signed(Number((share * 100).toFixed(1)))} %`;
}

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${formatNumber(value, { significantDigits: 4 })}`;
}

/** `measured`, or `claimed → measured` where it has changed; empty where nothing is stated. */
export function basisText({ base, head }: ProfileChange): string {
  const [before, after] = [base, head].map((side) =>
    side?.basis ? basisWords(side.basis, side.isSimulated) : null,
  );
  if (!before || !after || before === after) return after ?? before ?? '';
  return `${before} → ${after}`;
}

/** `ashgrove/stagecraft-pla on brackwater/lantern, hs-0.6, workshop`. */
export function tableNameText({ machine, nozzle, filament, policy }: TableName): string {
  return `${filament} on ${machine}, ${nozzle}, ${policy}`;
}

/** `infill, layer 0.2 mm, line 0.44 mm`. */
export function cellText({ base, head }: CellMove): string {
  const row = head ?? base;
  return row === null ? '' : `${wordsOf(row.feature)}, layer ${row.layerHeight} mm, line ${row.lineWidth} mm`;
}

/** `344 mm/s, melt`, with the acceleration and temperature where they are what has moved. */
export function rowText(row: SpeedRow | null, other: SpeedRow | null): string {
  if (row === null) return '-';
  const isOther = (key: keyof SpeedRow) => other !== null && other[key] !== row[key];
  return [
    `${row.speed} mm/s`,
    row.bound,
    ...(isOther('acceleration') ? [`${row.acceleration} mm/s2`] : []),
    ...(isOther('nozzleTemperature') ? [`${row.nozzleTemperature} Cel`] : []),
  ].join(', ');
}

/** `ashgrove/stagecraft-pla: drying temperature 50 Cel → 45 Cel`. */
export function settingText({ filament, setting, unit, base, head }: SettingMove): string {
  const [old, now] = [base, head].map((window) => windowText(window, unit));
  return `${filament}: ${wordsOf(setting)} ${old} → ${now}`;
}

function windowText(window: SettingMove['base'], unit: string): string {
  if (window === null) return 'none';
  const [low, high] = [formatNumber(window.low), formatNumber(window.high)];
  return `${low === high ? low : `${low}..${high}`} ${unit}`;
}

/** How far the speed of a cell has moved; empty where it has not, or where there is nothing to compare. */
export function cellMoveText({ base, head }: CellMove): string {
  if (base === null || head === null || base.speed === head.speed) return '';
  return percentText(head.speed / base.speed - 1);
}
