import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SpeedTable } from '../../../src/tables/derive/speed-table.ts';
import { cellOf, headingOf, tableColumns } from '../../../src/tables/write/columns.ts';
import { formatTableAsCsv } from '../../../src/tables/write/table-as-csv.ts';
import { formatTableAsJson } from '../../../src/tables/write/table-as-json.ts';
import { formatTableAsMarkdown } from '../../../src/tables/write/table-as-markdown.ts';
import { formatTableCsvMetadata } from '../../../src/tables/write/table-csv-metadata.ts';
import { printableLines } from '../../../src/text/printable.ts';
import { fullFigures, tableWith } from '../derive/pairing-with.ts';

const table = tableWith(fullFigures);

/** The table with an input of another kind, the only free text of a table that reaches every form. */
function withInput(kind: string): SpeedTable {
  return { ...table, inputs: [{ kind, id: 'x', version: null, digest: '0'.repeat(64) }] };
}

function lastCell(csv: string): string {
  return (parse(csv) as string[][])[1]!.at(-1)!;
}

describe('CSV', () => {
  const records = parse(formatTableAsCsv(table)) as string[][];

  it('has a header of names with units and a row for every cell of the table', () => {
    expect(records[0]).toEqual([...tableColumns.map(headingOf), 'quirks', 'inputs']);
    expect(records).toHaveLength(table.rows.length + 1);
  });

  it('reads back to the numbers of the table', () => {
    for (const [index, row] of table.rows.entries()) {
      for (const [position, column] of tableColumns.entries()) {
        const cell = records[index + 1]![position]!;
        expect(column.unit === null || cell === '' ? cell : Number(cell)).toBe(cellOf(row, column));
      }
    }
  });

  // RFC 4180, section 2, rule 1: each record on a line of its own, delimited by CRLF.
  it('ends every line with CRLF', () => {
    expect(formatTableAsCsv(table)).toMatch(/\r\n$/);
    expect(formatTableAsCsv(table).replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  // RFC 4180, section 2, rules 6 and 7: such cells stand in quotes, quotes in them are doubled.
  it.each(['a "word"', 'one, two', 'one\r\ntwo', '"'])('quotes %j so that it reads back', (text) => {
    const csv = formatTableAsCsv(withInput(text));
    expect(csv).toContain(`"${text.replaceAll('"', '""')} x sha256:0000000000000000"`);
    expect(lastCell(csv)).toBe(`${text} x sha256:0000000000000000`);
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1'])('defuses %j, which a spreadsheet would run', (text) => {
    expect(lastCell(formatTableAsCsv(withInput(text)))).toBe(`'${text} x sha256:0000000000000000`);
  });

  it('reads back whatever the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1 }), (text) => {
        const cell = lastCell(formatTableAsCsv(withInput(text)));
        const shown = `${printableLines(text)} x sha256:0000000000000000`;
        expect([shown, `'${shown}`]).toContain(cell);
        expect(cell).not.toMatch(/^[=+\-@\t\r]/);
      }),
    );
  });
});

// W3C Recommendation, Metadata Vocabulary for Tabular Data (2015): sections 5.3 table descriptions, 5.5 schemas,
// 5.6 columns, 5.9 dialects.
describe('the metadata of the CSV file', () => {
  const metadata = JSON.parse(formatTableCsvMetadata(table, 'table.csv'));
  const { columns, primaryKey } = metadata.tableSchema;

  it('describes the CSV file beside it', () => {
    expect(metadata['@context']).toEqual(['http://www.w3.org/ns/csvw', { '@language': 'en' }]);
    expect(metadata.url).toBe('table.csv');
    expect(metadata.dialect).toEqual({ header: true, encoding: 'utf-8', lineTerminators: ['\r\n'] });
  });

  it('titles the columns as the header of the CSV file does', () => {
    const [header] = parse(formatTableAsCsv(table)) as string[][];
    expect(columns.map(({ titles }: { titles: string }) => titles)).toEqual(header);
  });

  it('gives quantities their unit and a type that their cells have', () => {
    const [, ...records] = parse(formatTableAsCsv(table)) as string[][];
    for (const [index, column] of columns.entries()) {
      const unit = tableColumns[index]?.unit ?? undefined;
      expect(column['schema:unitText']).toBe(unit);
      expect(column.datatype).toBe(unit === undefined ? 'string' : 'decimal');
      if (unit !== undefined) expectDecimals(records.map((record) => record[index]));
    }
  });

  /** XML Schema part 2, 3.2.3: a decimal has no exponent; a fan that is not known is empty. */
  function expectDecimals(cells: readonly (string | undefined)[]): void {
    for (const cell of cells) expect(cell).toMatch(/^(\d+(\.\d+)?)?$/);
  }

  it('names columns as variables may be named, and a key that tells rows apart', () => {
    const names = columns.map(({ name }: { name: string }) => name);
    for (const name of names) expect(name).toMatch(/^[A-Za-z][A-Za-z0-9]*$/);
    expect(new Set(names).size).toBe(names.length);
    const keyOf = (record: string[]) =>
      primaryKey.map((name: string) => record[names.indexOf(name)]).join(' ');
    const [, ...records] = parse(formatTableAsCsv(table)) as string[][];
    expect(new Set(records.map(keyOf)).size).toBe(records.length);
  });
});

describe('JSON', () => {
  const document = JSON.parse(formatTableAsJson(table));

  it('has exactly these keys in this order', () => {
    expect(Object.keys(document)).toEqual(
      'format,machine,nozzle,filament,policy,temperatures,largestFlow,caps,rows,conditions,sourcedValues,warnings,cautions,quirks,origin,inputs'.split(
        ',',
      ),
    );
    expect(document.format).toBe('meltbounds-tables/2');
    for (const [index, row] of document.rows.entries()) {
      const known = tableColumns.filter(
        (column) => column.key === 'flags' || cellOf(table.rows[index]!, column) !== '',
      );
      expect(Object.keys(row)).toEqual([
        ...known.map(({ key }) => key),
        'runnerUp',
        'bounds',
        'quirks',
        'settings',
      ]);
    }
  });

  it('gives every quantity with its unit', () => {
    for (const [index, row] of document.rows.entries()) {
      for (const column of tableColumns.filter(({ key }) => key !== 'flags')) {
        const value = cellOf(table.rows[index]!, column);
        const written = column.unit === null ? value : { value, unit: column.unit };
        expect(row[column.key]).toEqual(value === '' ? undefined : written);
      }
    }
  });

  it('gives every bound with its speed and basis, the one that binds first', () => {
    for (const [index, { bound, runnerUp, bounds }] of document.rows.entries()) {
      const row = table.rows[index]!;
      expect(bounds.map((each: { bound: string }) => each.bound)).toEqual(row.bounds.map(({ name }) => name));
      expect(bounds[0].bound).toBe(bound);
      expect(bounds[1].bound).toBe(runnerUp.bound);
      expect(bounds[1].allowed.value / bounds[0].allowed.value - 1).toBeCloseTo(runnerUp.slack.value, 6);
    }
  });

  it('says once what each number rests on, and names it by its key', () => {
    for (const { bounds, settings } of document.rows) {
      for (const key of [
        ...settings,
        ...bounds.flatMap(({ sourcedValues }: { sourcedValues: string[] }) => sourcedValues),
      ]) {
        expect(document.sourcedValues).toHaveProperty([key]);
      }
    }
    expect(document.sourcedValues['filament oakhollow/daisy-pla /meltFlow/1/value']).toEqual({
      what: 'melt flow limit',
      value: 26,
      interval: { low: 27.4, high: 28.2, unit: 'mm3/s' },
      reason: 'Kept lower for worn nozzles',
      unit: 'mm3/s',
      basis: 'measured',
      evidence: 'wren-daisy-pla-230',
    });
  });

  it('leaves out the version of what has none', () => {
    const trials = document.inputs.filter(({ kind }: { kind: string }) => kind === 'trial');
    expect(trials).toHaveLength(2);
    for (const trial of trials) expect(Object.keys(trial)).toEqual(['kind', 'id', 'sha256']);
  });
});

describe('Markdown', () => {
  const lines = formatTableAsMarkdown(table).split('\n');
  const rows = lines.slice(0, lines.indexOf('## House caps')).filter((line) => line.startsWith('|'));
  const columns = tableColumns.filter(({ key }) => key !== 'nozzleTemperature');
  const printed = table.rows.filter(({ feature }) => feature !== 'travel');

  it('lines up as plain text', () => {
    expect(rows).toHaveLength(printed.length + 1 + 2);
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  });

  it('aligns quantities to the right and words to the left', () => {
    const rule = rows[1]!
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim());
    expect(rule.map((cell) => cell.endsWith(':'))).toEqual(columns.map(({ unit }) => unit !== null));
  });

  it('reads back to the numbers of the table', () => {
    const cells = rows[2]!
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim());
    expect(cells).toEqual(columns.map((column) => String(cellOf(table.rows[0]!, column))));
  });

  it('lists warnings, cautions and what the table was derived from', () => {
    const text = formatTableAsMarkdown({ ...table, warnings: ['A line is left out.'] });
    expect(text).toContain('\n- **Warning:** A line is left out.\n');
    expect(text).toMatch(/\n- \*\*Caution:\*\* These numbers are starting points /);
    expect(text).toMatch(/\n## Derived from\n\n- machine plumstead\/wren 1\.0\.0, sha256 [0-9a-f]{64}\n/);
  });

  it.each([
    ['<img src=x>', '\\<img src=x\\>'],
    ['[a](b)', '\\[a\\](b)'],
    ['`code`', '\\`code\\`'],
    ['a | b', 'a \\| b'],
    ['*bold*', '\\*bold\\*'],
    ['&lt;', '\\&lt;'],
  ])('shows %j as it is, and not as markup', (text, written) => {
    expect(formatTableAsMarkdown(withInput(text))).toContain(`\n- ${written} x, sha256 `);
  });
});
