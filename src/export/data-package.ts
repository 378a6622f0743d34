import { tableCautions } from '../knowledge/cautions.ts';
import { type Origin, originOf, originSentence } from '../knowledge/origin.ts';
import type { Source } from '../registry/generated/documents.ts';
import type { Registry } from '../registry/registry.ts';
import type { LikelyPairings } from '../tables/derive/likely-pairings.ts';
import { enumerated } from '../text/words.ts';
import type { AnyExportTable } from './export-table.ts';

/** A written table. */
export interface WrittenTable {
  readonly table: AnyExportTable;
  readonly path: string;
  readonly rows: number;
  readonly bytes: number;
  readonly sha256: string;
}

/** What a package says besides its tables. */
interface PackageFacts {
  /** Licence of the registry, by its SPDX id; null where it is not known. */
  readonly licence: string | null;
  /** What tables were derived for. */
  readonly pairings: LikelyPairings;
}

/** Policies that are named. */
const mostNamed = 4;

/** Version of the form of an export: it grows when a program that reads one must change. */
const exportFormat = 'meltbounds-export/1';

/**
 * What describes an export for programs, as the Data Package standard 2.0 has it (datapackage.org): every table with its columns, their
 * types, units, keys and digest, and the sources of the registry.
 */
export function dataPackage(
  registry: Registry,
  tables: readonly WrittenTable[],
  { licence, pairings }: PackageFacts,
): Record<string, unknown> {
  const sources = [...registry.source.values()].map(({ data }) => packageSource(data));
  return {
    $schema: 'https://datapackage.org/profiles/2.0/datapackage.json',
    name: 'meltbounds-export',
    title: 'Measured limits of material-extrusion machines and filaments',
    description: descriptionOf(wholeOrigin(registry), pairings),
    ...(licence !== null && { licenses: [{ name: licence }] }),
    ...(sources.length > 0 && { sources }),
    format: exportFormat,
    resources: tables.map(resource),
  };
}

function descriptionOf(origin: Origin, pairings: LikelyPairings): string {
  return [
    originSentence(origin) ?? '',
    'Numbers are in the unit that the name of a column ends with, or that stands in the column `unit` of their row.',
    tablesNote(pairings),
    ...tableCautions,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

function tablesNote({ requests, isCut }: LikelyPairings): string {
  if (requests.length === 0) return 'No tables were derived.';
  const policies = [...new Set(requests.map(({ policy }) => policy))];
  const under = `${policies.length > 1 ? 'policies' : 'policy'} ${enumerated(policies)}`;
  const which = isCut
    ? 'pairings that a trial or a melt flow limit names together'
    : 'every pairing that has one';
  return policies.length > mostNamed
    ? `Tables are given for ${which}.`
    : `Tables are given for ${which}, under ${under}.`;
}

/** What of the whole registry is not real. */
function wholeOrigin(registry: Registry): Origin {
  return originOf(registry, { profiles: registry.profiles, trials: registry.trial.keys() });
}

function packageSource({ title, DOI, URL, invented }: Source): Record<string, string> {
  const path = DOI === undefined ? URL : `https://doi.org/${DOI}`;
  const shown = invented === true ? `${title} (invented)` : title;
  return { title: shown, ...(path !== undefined && /^https?:\/\//.test(path) && { path }) };
}

function resource({ table, path, rows, bytes, sha256 }: WrittenTable): Record<string, unknown> {
  return {
    name: table.name,
    type: 'table',
    path,
    title: table.title,
    description: table.description,
    format: 'parquet',
    mediatype: 'application/vnd.apache.parquet',
    bytes,
    hash: `sha256:${sha256}`,
    rows,
    schema: tableSchema(table),
  };
}

/** The columns and keys of a table, as Table Schema 2.0 has them; `unit` holds UCUM codes. */
function tableSchema({ columns, primaryKey, foreignKeys }: AnyExportTable): Record<string, unknown> {
  return {
    $schema: 'https://datapackage.org/profiles/2.0/tableschema.json',
    fields: columns.map(({ name, type, description, unit }) => ({
      name,
      type,
      description,
      ...(unit !== null && { unit }),
    })),
    primaryKey,
    ...(foreignKeys.length > 0 && {
      foreignKeys: foreignKeys.map((key) => ({
        fields: key.columns,
        reference: { resource: key.table, fields: key.references },
      })),
    }),
  };
}
