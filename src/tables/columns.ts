import type { SpeedRow } from './speed-table.ts';

/** A column of the speed table: its unit, if it holds a quantity, and how its values are written. */
export interface TableColumn {
  readonly key: keyof SpeedRow;
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
    description: 'What holds the speed there: melt, motion, cooling, machine or quality',
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
];

/** Heading of a column: its name with the unit, as bench sheets write it. */
export function headingOf({ key, unit }: TableColumn): string {
  return unit === null ? key : `${key} [${unit}]`;
}
