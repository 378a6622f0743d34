import { originOf } from '../knowledge/origin.ts';
import { type FittedNozzle, nozzlesOf } from '../registry/nozzle.ts';
import type { Profile } from '../registry/profile.ts';
import { flag, quantity, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, rowOf } from './export-table.ts';

interface ExportedNozzle extends FittedNozzle {
  readonly machine: Profile<'machine'>;
  readonly isInvented: boolean;
}

type Machine = Profile<'machine'>['data'];

const ofMachine = (name: string, description: string, cell: (machine: Machine) => string | undefined) =>
  words<ExportedNozzle>(name, description, ({ machine }) => cell(machine.data));

/** One row per nozzle of a machine. */
export const nozzlesTable: ExportTable<ExportedNozzle> = {
  name: 'nozzles',
  title: 'Machines and their nozzles',
  description: 'One row per nozzle of a machine, with what the machine is. What it can do stands in limits.',
  primaryKey: ['machine_id', 'nozzle_id'],
  foreignKeys: [],
  columns: [
    ofMachine('machine_id', 'Machine', ({ id }) => id),
    words('nozzle_id', 'Nozzle of that machine', ({ nozzle }) => nozzle.id),
    quantity('nozzleDiameter', 'length', 'diameter of the nozzle', ({ nozzle }) => nozzle.diameter),
    words('nozzle_material', 'Material of the nozzle', ({ nozzle }) => nozzle.material),
    words('hot_end_id', 'Hot end that it fits', ({ hotEnd }) => hotEnd.id),
    quantity(
      'filamentDiameter',
      'length',
      'diameter of the filament',
      ({ hotEnd }) => hotEnd.filamentDiameter,
    ),
    words('liner', 'Liner of the hot end', ({ hotEnd }) => hotEnd.liner),
    ofMachine('machine_version', 'Version of the profile', ({ version }) => version),
    ofMachine('machine_name', 'Name of the machine', ({ name }) => name),
    ofMachine('maker', 'Maker of the machine', ({ maker }) => maker),
    ofMachine('layout', 'How its axes move', ({ layout }) => layout),
    quantity('envelopeX', 'length', 'width of the build envelope', ({ machine }) => machine.data.envelope.x),
    quantity('envelopeY', 'length', 'depth of it', ({ machine }) => machine.data.envelope.y),
    quantity('envelopeZ', 'length', 'height of it', ({ machine }) => machine.data.envelope.z),
    flag(
      'chamber_is_enclosed',
      'Whether its chamber is closed',
      ({ machine }) => machine.data.chamber.enclosed,
    ),
    flag('chamber_is_heated', 'Whether its chamber is heated', ({ machine }) => machine.data.chamber.heated),
    ofMachine('firmware', 'Version of its controller software', ({ firmware }) => firmware),
    flag('is_invented', 'Whether the machine is invented', ({ isInvented }) => isInvented),
    words('file', 'File of the machine', ({ machine }) => machine.source.relativePath),
    words('file_sha256', 'SHA-256 of that file with LF line ends', ({ machine }) => machine.source.digest),
  ],
};

/** The nozzles of every machine, in the order of its files. */
export function* nozzleRows({ registry }: ExportSource): Generator<ExportedRow> {
  for (const machine of registry.machine.values()) {
    const isInvented = originOf(registry, { profiles: [machine] }).invented.length > 0;
    for (const fitted of nozzlesOf(machine.data))
      yield rowOf(nozzlesTable, { machine, isInvented, ...fitted });
  }
}
