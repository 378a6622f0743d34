import { type Basis, weakerBasis } from '../../registry/statement.ts';
import type { FullRequest } from '../derive/every-pairing.ts';
import type { SpeedTable } from '../derive/speed-table.ts';

/** A pairing that was tabled: where its files lie, and what to know of it at a glance. */
export interface TabledPairing extends FullRequest {
  /** Folder from that of the index, with `/`, and the names of the files in it. */
  readonly folder: string;
  readonly files: readonly string[];
  /** mm3/s */
  readonly largestFlow: number;
  /** Of the numbers that the speeds rest on. */
  readonly weakestBasis: Basis;
  readonly warnings: number;
  /** What is not real behind it: `simulated`, `invented`. */
  readonly flags: readonly ('simulated' | 'invented')[];
}

/** A pairing without a table, and a sentence that says why. */
export interface OmittedPairing extends FullRequest {
  readonly reason: string;
}

/** What `tables --all` made of a registry. */
export interface TableIndex {
  readonly tabled: readonly TabledPairing[];
  readonly omitted: readonly OmittedPairing[];
}

/** The entry of a table. */
export function tabledPairing(
  request: FullRequest,
  table: SpeedTable,
  files: readonly string[],
): TabledPairing {
  const [first = 'assumed', ...others] = table.rows.flatMap(({ basis }) => basis ?? []);
  return {
    ...request,
    folder: pairingFolder(request),
    files,
    largestFlow: Math.max(0, ...table.rows.map(({ flow }) => flow)),
    weakestBasis: others.reduce(weakerBasis, first),
    warnings: table.warnings.length,
    flags: [
      ...(table.origin.simulated.length > 0 ? (['simulated'] as const) : []),
      ...(table.origin.invented.length > 0 ? (['invented'] as const) : []),
    ],
  };
}

/** Where the files of a pairing lie: the ids as folders, so that no two pairings share one. */
function pairingFolder({ policy, machine, nozzle, filament }: FullRequest): string {
  return [policy, machine, nozzle, filament]
    .flatMap((id) => id.split('/'))
    .map((part) => part.replace(/[^A-Za-z0-9._-]+|^\.+/g, '-'))
    .join('/');
}
