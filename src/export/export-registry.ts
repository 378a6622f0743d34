import { reducingOnce } from '../bench/reducing-once.ts';
import type { Registry } from '../registry/registry.ts';
import { type LikelyPairings, likelyPairings } from '../tables/derive/likely-pairings.ts';
import { jsonText } from '../text/json-text.ts';
import { beginSha256 } from '../text/sha256.ts';
import { claimRows, claimsTable } from './claims-table.ts';
import { dataPackage, type WrittenTable } from './data-package.ts';
import type { AnyExportTable, ExportedRow, ExportSource } from './export-table.ts';
import { filamentRows, filamentsTable } from './filaments-table.ts';
import { limitRows, limitsTable } from './limits-table.ts';
import { nozzleRows, nozzlesTable } from './nozzles-table.ts';
import { parquetFile } from './parquet-file.ts';
import { readingRows, readingsTable } from './readings-table.ts';
import { resultRows, resultsTable } from './results-table.ts';
import { sourceRows, sourcesTable } from './sources-table.ts';
import { speedLimitsTable, speedRows, speedsTable } from './speeds-table.ts';
import { trialRows, trialsTable } from './trials-table.ts';

/** Every table of an export. */
const exportTables: readonly AnyExportTable[] = [
  ...[readingsTable, trialsTable, resultsTable, limitsTable, speedsTable, speedLimitsTable],
  ...[nozzlesTable, filamentsTable, claimsTable, sourcesTable],
];

/** The next bytes of a file. */
export interface FilePart {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A table of an export, by the path of its file. */
export type ExportedTable = Pick<WrittenTable, 'path' | 'rows'>;

/** How a registry is exported. */
export interface ExportOptions {
  /** Date by which the evidence is judged, YYYY-MM-DD. */
  readonly today: string;
  /** What the files are said to be written by, such as `meltbounds version 0.1.0`. */
  readonly program: string;
  /** Licence of the registry, by its SPDX id; unless given none is named. */
  readonly licence?: string;
  /** What tables are derived for; unless given what `likelyPairings` finds. None: the tables have no rows. */
  readonly pairings?: LikelyPairings;
}

/**
 * The files of an export, piece by piece, each piece to be put behind the earlier ones of the same name: Parquet files with the
 * readings, limits and tables of a registry and what lies between, and `datapackage.json`, which describes them. No more
 * than a few row groups are held at once. The same registry gives the same bytes on the same day. In the end it returns the tables with their
 * numbers of rows.
 */
export function* exportRegistry(
  registry: Registry,
  options: ExportOptions,
): Generator<FilePart, readonly ExportedTable[]> {
  const { today, program, licence = null, pairings = likelyPairings(registry) } = options;
  const files = new Map(exportTables.map((table) => [table.name, growingFile(table, program)]));
  const source: ExportSource = { registry, today, reduce: reducingOnce(registry) };
  for (const { table, cells } of rowsOf(source, pairings)) yield* files.get(table)?.add(cells) ?? [];
  for (const file of files.values()) yield* file.end();
  const written = [...files.values()].map(({ facts }) => facts());
  const description = jsonText(dataPackage(registry, written, { licence, pairings }));
  yield { name: 'datapackage.json', bytes: new TextEncoder().encode(description) };
  return written.map(({ path, rows }) => ({ path, rows }));
}

function* rowsOf(source: ExportSource, { requests }: LikelyPairings): Generator<ExportedRow> {
  yield* readingRows(source);
  yield* trialRows(source);
  yield* resultRows(source);
  yield* limitRows(source);
  yield* speedRows(source, requests);
  yield* nozzleRows(source);
  yield* filamentRows(source);
  yield* claimRows(source);
  yield* sourceRows(source);
}

/** A table on its way into a file, and what is known of the file so far. */
function growingFile(table: AnyExportTable, program: string) {
  const file = parquetFile(table, program);
  const path = `${table.name}.parquet`;
  const hash = beginSha256();
  let [rows, bytes] = [0, 0];
  const part = (piece: Uint8Array): FilePart => {
    hash.add(piece);
    bytes += piece.length;
    return { name: path, bytes: piece };
  };
  return {
    add: (cells: ExportedRow['cells']): FilePart[] => {
      rows += 1;
      const piece = file.add(cells);
      return piece === null ? [] : [part(piece)];
    },
    end: (): FilePart[] => [part(file.end())],
    facts: () => ({ table, path, rows, bytes, sha256: hash.digest() }),
  };
}
