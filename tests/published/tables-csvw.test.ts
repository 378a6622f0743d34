import { Readable } from 'node:stream';
import rdf from '@rdfjs/data-model';
import Parser from 'rdf-parser-csvw';
import { expect, it } from 'vitest';
import { cellOf, tableColumns } from '../../src/tables/write/columns.ts';
import {
  formatConditionsAsCsv,
  formatConditionsCsvMetadata,
} from '../../src/tables/write/conditions-as-csv.ts';
import { formatTableAsCsv } from '../../src/tables/write/table-as-csv.ts';
import { formatTableCsvMetadata } from '../../src/tables/write/table-csv-metadata.ts';
import { fullFigures, tableWith } from '../tables/derive/pairing-with.ts';

const csvw = 'http://www.w3.org/ns/csvw#';
const rdfNamespace = 'http://www.w3.org/1999/02/22-rdf-syntax-ns#';
const xsd = 'http://www.w3.org/2001/XMLSchema#';
const base = 'http://example.org/table.csv';

interface Column {
  readonly name: string;
  readonly titles: string;
  readonly datatype: string;
  readonly 'schema:unitText'?: string;
}

type Term = ReturnType<typeof rdf.namedNode>;
type Quads = ReturnType<typeof rdf.quad>[];

/**
 * The metadata as RDF. W3C Recommendation, Metadata Vocabulary for Tabular Data (2015), appendix A, JSON-LD context:
 * `columns` is the list csvw:column, `titles` csvw:title, a built-in datatype an IRI of XML Schema.
 */
function metadataQuads(columns: readonly Column[]): Quads {
  const [table, schema] = [rdf.blankNode(), rdf.blankNode()];
  const quads = [
    rdf.quad(table, rdf.namedNode(`${csvw}url`), rdf.namedNode(base)),
    rdf.quad(table, rdf.namedNode(`${csvw}tableSchema`), schema),
  ];
  const cells = columns.map(() => rdf.blankNode());
  quads.push(rdf.quad(schema, rdf.namedNode(`${csvw}column`), cells[0]!));
  for (const [index, { name, titles, datatype }] of columns.entries()) {
    const node = rdf.blankNode();
    const rest = cells[index + 1] ?? rdf.namedNode(`${rdfNamespace}nil`);
    quads.push(
      rdf.quad(cells[index]!, rdf.namedNode(`${rdfNamespace}first`), node),
      rdf.quad(cells[index]!, rdf.namedNode(`${rdfNamespace}rest`), rest),
      rdf.quad(node, rdf.namedNode(`${csvw}name`), rdf.literal(name)),
      rdf.quad(node, rdf.namedNode(`${csvw}title`), rdf.literal(titles)),
      rdf.quad(node, rdf.namedNode(`${csvw}datatype`), rdf.namedNode(`${xsd}${datatype}`)),
    );
  }
  return quads;
}

function dataset(quads: Quads): Dataset {
  return {
    match: (subject?: Term | null, predicate?: Term | null): Dataset =>
      dataset(
        quads.filter(
          (quad) =>
            (subject == null || quad.subject.equals(subject)) &&
            (predicate == null || quad.predicate.equals(predicate)),
        ),
      ),
    [Symbol.iterator]: () => quads[Symbol.iterator](),
  };
}

interface Dataset extends Iterable<Quads[number]> {
  match(subject?: Term | null, predicate?: Term | null): Dataset;
}

/** Rows as an independent reader of CSV on the Web sees them: text, or a number where the datatype is decimal. */
async function readRows(csv: string, metadata: string): Promise<Record<string, string | number>[]> {
  const { columns } = JSON.parse(metadata).tableSchema as { columns: Column[] };
  const parser = new Parser({ metadata: dataset(metadataQuads(columns)), baseIRI: base });
  const rows = new Map<string, Record<string, string | number>>();
  for await (const { subject, predicate, object } of parser.import(Readable.from([csv]))) {
    if (!predicate.value.startsWith(`${base}#`)) continue;
    const row = rows.get(subject.value) ?? {};
    const isNumber = object.datatype?.value === `${xsd}decimal`;
    row[predicate.value.slice(base.length + 1)] = isNumber ? Number(object.value) : object.value;
    rows.set(subject.value, row);
  }
  return [...rows.values()];
}

const table = tableWith(fullFigures);

it('an independent reader of CSV on the Web reads the speeds as they are, with their types', async () => {
  const rows = await readRows(formatTableAsCsv(table), formatTableCsvMetadata(table, 'table.csv'));
  expect(rows.map(({ inputs: _, quirks: __, ...row }) => row)).toEqual(
    table.rows.map((row) => {
      const cells = tableColumns.map((column) => [column.key, cellOf(row, column)] as const);
      // An empty cell is null (Tabular Data Model, 6.4.8), and null has no triple.
      return Object.fromEntries(cells.filter(([, cell]) => cell !== ''));
    }),
  );
});

it('the metadata give each quantity the unit that the table has it in', () => {
  const { columns } = JSON.parse(formatTableCsvMetadata(table, 'table.csv')).tableSchema as {
    columns: Column[];
  };
  const units = columns.map((column) => [column.name, column['schema:unitText'] ?? null]);
  expect(units.slice(0, -2)).toEqual(tableColumns.map(({ key, unit }) => [key, unit]));
});

it('the same reader reads the conditions, and leaves out empty cells', async () => {
  const rows = await readRows(formatConditionsAsCsv(table), formatConditionsCsvMetadata(table, 'table.csv'));
  expect(rows.map(({ condition, low, high, unit }) => ({ condition, low, high, unit }))).toEqual(
    table.conditions.map(({ name, window, unit }) => ({
      condition: name,
      low: window?.low,
      high: window?.high,
      unit,
    })),
  );
});
