import { originOf } from '../knowledge/origin.ts';
import type { Profile } from '../registry/profile.ts';
import { flag, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, rowOf } from './export-table.ts';
import { factColumns } from './quantity-fields.ts';

interface ExportedFilament {
  readonly filament: Profile<'filament'>;
  readonly isInvented: boolean;
}

type Filament = Profile<'filament'>['data'];

const ofFilament = (name: string, description: string, cell: (filament: Filament) => string | undefined) =>
  words<ExportedFilament>(name, description, ({ filament }) => cell(filament.data));

/** One row per filament. */
export const filamentsTable: ExportTable<ExportedFilament> = {
  name: 'filaments',
  title: 'Filaments',
  description:
    'One row per filament. What was found on machines, and what its sheet claims, stands in limits.',
  primaryKey: ['filament_id'],
  foreignKeys: [],
  columns: [
    ofFilament('filament_id', 'Filament', ({ id }) => id),
    ofFilament('version', 'Version of the profile', ({ version }) => version),
    ofFilament('name', 'Name of the filament', ({ name }) => name),
    ofFilament('maker', 'Maker of the filament', ({ maker }) => maker),
    ofFilament('polymer_id', 'Polymer family, by its symbol (ISO 1043-1)', ({ polymer }) => polymer),
    ofFilament('designation', 'Designation with fillers (ISO 1043)', ({ designation }) => designation),
    ...factColumns<ExportedFilament>('filament', ({ filament }) => filament.data),
    flag('is_invented', 'Whether the filament is invented', ({ isInvented }) => isInvented),
    words('file', 'File of the filament', ({ filament }) => filament.source.relativePath),
    words('file_sha256', 'SHA-256 of that file with LF line ends', ({ filament }) => filament.source.digest),
  ],
};

/** Every filament, in the order of its files. */
export function* filamentRows({ registry }: ExportSource): Generator<ExportedRow> {
  for (const filament of registry.filament.values()) {
    const isInvented = originOf(registry, { profiles: [filament] }).invented.length > 0;
    yield rowOf(filamentsTable, { filament, isInvented });
  }
}
