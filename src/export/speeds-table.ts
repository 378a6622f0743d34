import { sourcedValuesIn } from '../tables/derive/calculation.ts';
import { deriveEach, type FullRequest } from '../tables/derive/every-pairing.ts';
import { rowAddress } from '../tables/derive/row-address.ts';
import type { SourcedValue } from '../tables/derive/sourced-value.ts';
import type { Bound, SpeedRow, SpeedTable } from '../tables/derive/speed-table.ts';
import { flag, quantity, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, refersTo, rowOf } from './export-table.ts';

interface ExportedSpeed {
  readonly table: SpeedTable;
  readonly row: SpeedRow;
}

const ofTable = (name: string, description: string, cell: (table: SpeedTable) => string | null) =>
  words<ExportedSpeed>(name, description, ({ table }) => cell(table));

/** One row per speed of the neutral tables. */
export const speedsTable: ExportTable<ExportedSpeed> = {
  name: 'tables',
  title: 'Neutral tables',
  description:
    'One row per speed: a machine, nozzle and filament under a policy, a feature, a layer height and a line width, at the nozzle temperature that the policy chooses.',
  primaryKey: ['table_id', 'row_id'],
  foreignKeys: [
    { columns: ['machine_id', 'nozzle_id'], table: 'nozzles', references: ['machine_id', 'nozzle_id'] },
    refersTo('filaments', 'filament_id'),
  ],
  columns: [
    ofTable('table_id', 'Machine, nozzle, filament and policy, separated by spaces', tableId),
    words('row_id', 'Address of the row in its table, as `tables --explain` takes it', ({ row }) =>
      rowAddress(row),
    ),
    ofTable('machine_id', 'Machine', ({ machine }) => machine),
    ofTable('nozzle_id', 'Nozzle of that machine', ({ nozzle }) => nozzle),
    ofTable('filament_id', 'Filament', ({ filament }) => filament),
    ofTable('policy_id', 'House rules', ({ policy }) => policy),
    ofTable('policy_version', 'Version of the house rules', policyVersion),
    words('feature', 'Feature of the printed part', ({ row }) => row.feature),
    quantity('layerHeight', 'length', 'layer height', ({ row }) => row.layerHeight),
    quantity('lineWidth', 'length', 'line width', ({ row }) => row.lineWidth),
    quantity('nozzleTemperature', 'temperature', 'nozzle temperature', ({ row }) => row.nozzleTemperature),
    quantity('speed', 'speed', 'speed of the nozzle along the path', ({ row }) => row.speed),
    quantity('flow', 'volumeFlow', 'flow of melt at that speed; zero on travel moves', ({ row }) => row.flow),
    quantity('acceleration', 'acceleration', 'acceleration along the path', ({ row }) => row.acceleration),
    quantity('runUp', 'length', 'length in which the speed is reached from a stop', ({ row }) => row.runUp),
    quantity('fan', 'ratio', 'part-cooling fan, empty where it is not known', ({ row }) => row.fan),
    words(
      'bound',
      'What limits the speed: melt, traction, motion, cooling, machine, quality or policy',
      ({ row }) => row.bound,
    ),
    words('next_bound', 'What would limit it next', ({ row }) => row.runnerUp?.name),
    quantity(
      'nextSlack',
      'ratio',
      'how much faster that lets the feature go',
      ({ row }) => row.runnerUp?.slack,
    ),
    words(
      'basis',
      'Basis of the weakest number that the speed rests on; empty where a cap of the policy alone holds it',
      ({ row }) => row.basis,
    ),
    words(
      'flags',
      'What a reader must know, words separated by a space, as in the tables',
      ({ row }) => row.flags.join(' ') || null,
    ),
    flag('is_simulated', 'Whether it rests on readings that no bench has read', ({ row }) =>
      row.flags.includes('simulated'),
    ),
    flag('is_invented', 'Whether a profile that it rests on is invented', ({ row }) =>
      row.flags.includes('invented'),
    ),
    quantity(
      'largestFlow',
      'volumeFlow',
      'melt flow limit of the table at its nozzle temperature',
      ({ table }) => table.largestFlow.limit,
    ),
    quantity(
      'usableFlow',
      'volumeFlow',
      'what the policy leaves of it',
      ({ table }) => table.largestFlow.usable,
    ),
  ],
};

function policyVersion({ inputs }: SpeedTable): string | null {
  return inputs.find(({ kind }) => kind === 'policy')?.version ?? null;
}

interface SpeedLimit extends ExportedSpeed {
  readonly ground: SourcedValue;
  readonly bound: Bound;
  readonly isBinding: boolean;
}

/** From every speed to the values that its bounds rest on. */
export const speedLimitsTable: ExportTable<SpeedLimit> = {
  name: 'table_limits',
  title: 'From tables to limits',
  description:
    'One row per stated value that a bound of a speed rests on: between a row of the tables and limits.',
  primaryKey: ['table_id', 'row_id', 'bound', 'limit_id'],
  foreignKeys: [refersTo('tables', 'table_id', 'row_id'), refersTo('limits', 'limit_id')],
  columns: [
    words('table_id', 'Table', ({ table }) => tableId(table)),
    words('row_id', 'Row of that table', ({ row }) => rowAddress(row)),
    words('bound', 'Bound that rests on the value', ({ bound }) => bound.name),
    flag('is_binding', 'Whether that bound is the one that limits the speed', ({ isBinding }) => isBinding),
    quantity(
      'allowedSpeed',
      'speed',
      'speed that the bound leaves to the feature',
      ({ bound }) => bound.allowed,
    ),
    words('limit_id', 'The value', ({ ground }) => ground.key),
  ],
};

function tableId({ machine, nozzle, filament, policy }: SpeedTable): string {
  return [machine, nozzle, filament, policy].join(' ');
}

/** The speeds of some pairings, and what each rests on; a pairing without a table is left out. */
export function* speedRows(
  { registry, today, reduce }: ExportSource,
  requests: readonly FullRequest[],
): Generator<ExportedRow> {
  for (const { table } of deriveEach(registry, requests, today, reduce)) {
    if (!table.ok) continue;
    for (const row of table.value.rows) {
      const speed = { table: table.value, row };
      yield rowOf(speedsTable, speed);
      yield* limitsBehind(speed);
    }
  }
}

function* limitsBehind(speed: ExportedSpeed): Generator<ExportedRow> {
  for (const [index, bound] of speed.row.bounds.entries()) {
    const used = bound.name === 'melt' ? meltGrounds(speed.row, bound) : sourcedValuesIn(bound);
    const stated = new Map(used.filter(({ basis }) => basis !== null).map((ground) => [ground.key, ground]));
    for (const ground of stated.values())
      yield rowOf(speedLimitsTable, { ...speed, bound, ground, isBinding: index === 0 });
  }
}

/** Between tested temperatures a melt limit rests on the line, whose arithmetic stands among the sizes. */
function meltGrounds({ sizes }: SpeedRow, bound: Bound): SourcedValue[] {
  return [...sourcedValuesIn(bound), ...sizes.flatMap(({ fittedTo = [] }) => fittedTo)];
}
