import { clean } from '../../units/round-to-step.ts';
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
  | 'fan'
  | 'runUp'
  | 'basis'
  | 'flags';

/** A column of the speed table: its unit, if it holds a quantity, and how its values are written. */
interface TableColumn {
  readonly key: CellKey;
  /** UCUM code, or null for a word. */
  readonly unit: string | null;
  readonly description: string;
  /** Whether a cell of it may be empty. */
  readonly mayBeEmpty?: true;
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
    description: 'What limits the speed there: melt, traction, motion, cooling, machine, quality or policy',
  },
  {
    key: 'nozzleTemperature',
    unit: 'Cel',
    description: 'Nozzle temperature of the table, or of its first layer',
  },
  {
    key: 'fan',
    unit: '%',
    description: 'Part-cooling fan; empty where it is not known, and on travel moves',
    mayBeEmpty: true,
  },
  { key: 'runUp', unit: 'mm', description: 'Length in which the speed is reached from a stop' },
  {
    key: 'basis',
    unit: null,
    description:
      'What the speed rests on: measured, published, derived, claimed or assumed; empty where a cap of the policy holds it',
    mayBeEmpty: true,
  },
  {
    key: 'flags',
    unit: null,
    description:
      'What a reader must know, words separated by a space: unsupported, stale, acknowledged, untested, weakBasis, capped, simulated, invented, quirk; empty where there is nothing',
    mayBeEmpty: true,
  },
];

/** The value of a cell: a number in the unit of its column, or text; empty text where there is none. */
export function cellOf(row: SpeedRow, { key }: TableColumn): string | number {
  if (key === 'flags') return row.flags.join(' ');
  if (key === 'fan') return row.fan === null ? '' : clean(100 * row.fan);
  return row[key] ?? '';
}

/** Heading of a column: its name with the unit, as bench sheets write it. */
export function headingOf({ key, unit }: TableColumn): string {
  return unit === null ? key : `${key} [${unit}]`;
}
