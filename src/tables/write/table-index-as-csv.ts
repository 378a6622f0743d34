import { formatCsv } from '../../text/csv.ts';
import type { TableIndex } from './table-index.ts';

const headings = [
  ...['policy', 'machine', 'nozzle', 'filament', 'status', 'folder'],
  ...['largestFlow [mm3/s]', 'weakestBasis', 'warnings', 'flags', 'reason'],
];

/** The index as CSV (RFC 4180), a pairing a line: `tabled` with its folder, or `omitted` with the reason. */
export function formatTableIndexAsCsv({ tabled, omitted }: TableIndex): string {
  const made = tabled.map(({ policy, machine, nozzle, filament, folder, ...rest }) => [
    ...[policy, machine, nozzle, filament, 'tabled', folder],
    ...[rest.largestFlow, rest.weakestBasis, rest.warnings, rest.flags.join(' '), ''],
  ]);
  const without = omitted.map(({ policy, machine, nozzle, filament, reason }) => [
    ...[policy, machine, nozzle, filament, 'omitted', ''],
    ...['', '', '', '', reason],
  ]);
  return formatCsv([headings, ...made, ...without]);
}
