import { tableCautions } from './cautions.ts';
import { tableColumns } from './columns.ts';
import type { SpeedRow, SpeedTable, TableInput } from './speed-table.ts';

/** Version of the form of the JSON tables: it grows when a program that reads them must change. */
const tableFormat = 'meltbounds-tables/1';

/** The table as JSON: every quantity an object of value and unit. */
export function writeJson(table: SpeedTable): string {
  const document = {
    format: tableFormat,
    machine: table.machine,
    nozzle: { id: table.nozzle, diameter: { value: table.nozzleDiameter, unit: 'mm' } },
    filament: table.filament,
    policy: table.policy,
    rows: table.rows.map(jsonRow),
    warnings: table.warnings,
    cautions: tableCautions,
    inputs: jsonInputs(table),
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

function jsonRow(row: SpeedRow): Record<string, unknown> {
  return Object.fromEntries(
    tableColumns.map(({ key, unit }) => [key, unit === null ? row[key] : { value: row[key], unit }]),
  );
}

/** The inputs with their versions and whole digests. */
export function jsonInputs({ inputs }: SpeedTable): Record<string, unknown>[] {
  return inputs.map(({ kind, id, version, digest }: TableInput) => ({
    kind,
    id,
    ...(version !== null && { version }),
    sha256: digest,
  }));
}

/** What a table is called: the pairing and the policy. */
export function tableTitle({ machine, nozzle, filament, policy }: SpeedTable): string {
  return `${filament} on ${machine}, nozzle ${nozzle}, policy ${policy}`;
}
