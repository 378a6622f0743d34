import type { SpeedRow } from '../derive/speed-table.ts';

/** What a cell of the speed table may hold. */
type CellKey =
  | 'feature'
  | 'layerHeight'
  | 'lineWidth'
  | 'speed'
  | 'flow'
  | 'acceleration'
  | 'bound'
  | 'nozzleTemperature'
  | 'runUp'
  | 'basis'
  | 'flags';

/** A column of the speed table: its unit, if it holds a quantity, and how its values are written. */
interface TableColumn {
  readonly key: CellKey;
  /** UCUM code, or null for a word. */
  readonly unit: string | null;
  readonly description: string;
}

/** The columns of a speed table in their order; every writer follows it. */
export const tableColumns: readonly TableColumn[] = [
  { key: 'feature', unit: null, description: 'Feature of the printed part' },
  { key: 'layerHeight', unit: 'mm', description: 'Layer height' },
  { key: 'lineWidth', unit: 'mm', description: 'Line width' },
  { key: 'speed', unit: 'mm/s', description: 'Speed of the nozzle along the path' },
  { key: 'flow', unit: 'mm3/s', description: 'Volume flow of melt at that speed; zero on travel moves' },
  { key: 'acceleration', unit: 'mm/s2', description: 'Acceleration along the path' },
  {
    key: 'bound',
    unit: null,
    description: 'What limits the speed there: melt, motion, cooling, machine or quality',
  },
  {
    key: 'nozzleTemperature',
    unit: 'Cel',
    description: 'Lowest tested nozzle temperature that feeds the flow',
  },
  { key: 'runUp', unit: 'mm', description: 'Length in which the speed is reached from a stop' },
  {
    key: 'basis',
    unit: null,
    description: 'What the speed rests on: measured, published, derived, claimed or assumed',
  },
  {
    key: 'flags',
    unit: null,
    description:
      'What a reader must know, words separated by a space: unsupported, stale, acknowledged, untested, weakBasis, capped; empty where there is nothing',
  },
];

/** The value of a cell: a number in the unit of its column, or text. */
export function cellOf(row: SpeedRow, { key }: TableColumn): string | number {
  return key === 'flags' ? row.flags.join(' ') : row[key];
}

/** Heading of a column: its name with the unit, as bench sheets write it. */
export function headingOf({ key, unit }: TableColumn): string {
  return unit === null ? key : `${key} [${unit}]`;
}
