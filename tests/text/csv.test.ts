import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CsvCell, csvCell, formatCsv, readCsv } from '../../src/text/csv.ts';
import { printableLines } from '../../src/text/printable.ts';
import { runs } from '../property-runs.ts';

function read(text: string) {
  const records = readCsv(text);
  if (!records.ok) throw new Error(records.error.message);
  return records.value;
}

const cellsOf = (text: string) => read(text).map(({ cells }) => cells);

describe('comma-separated values', () => {
  // RFC 4180, section 2, rules 1 to 7.
  it.each([
    [
      'lines',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      'no end of the last line',
      'aaa,bbb\r\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      'cells in quotation marks',
      '"aaa","bbb"\r\nzzz,"yyy"',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      'a line end, a comma and a quotation mark in a cell',
      '"a\r\nb","c,d","e""f"',
      [['a\r\nb', 'c,d', 'e"f']],
    ],
    [
      'other line ends',
      'a,b\nc,d\re,f\n',
      [
        ['a', 'b'],
        ['c', 'd'],
        ['e', 'f'],
      ],
    ],
    ['a byte-order mark and blanks around cells', '\uFEFFa , "b" ,\tc\n', [['a', 'b', 'c']]],
    ['blanks inside of quotation marks', '" a "', [[' a ']]],
    ['empty cells and rows', ',a,\n\n"",', [['', 'a', ''], [''], ['', '']]],
    ['nothing', '', []],
  ])('are read with %s', (_, text, cells) => {
    expect(cellsOf(text)).toEqual(cells);
  });

  it('are read with the line on which a record ends', () => {
    expect(read('a\r\n"b\r\n\r\nc",d\n\ne').map(({ line }) => line)).toEqual([1, 4, 5, 6]);
  });

  it.each([
    ['a quotation mark that is not closed', 'a\n"b,c\nd', 'openQuote', 2],
    ['a quotation mark in a cell', 'a\nb"c', 'quoteInCell', 2],
    ['text behind a cell in quotation marks', '"a\n"b', 'textBesideQuotes', 2],
  ])('are refused with %s', (_, text, code, line) => {
    expect(readCsv(text)).toMatchObject({ ok: false, error: { code, line } });
  });

  // Blanks beside quotation marks are left out of one of them: the reference reads some of what stands between there.
  it.each([
    ['with quotation marks', ['a', 'b c', ',', ',', '"', '""', '\n', '\n', '1.5']],
    ['with blanks', ['a', 'b c', ',', ',', '\n', '\n', ' ', '\t', '1.5']],
  ])('%s are read as an independent reader reads them, or both refuse them', (_, signs) => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...signs), { maxLength: 30 }), (drawn) => {
        expect(readOrNull(drawn.join(''))).toEqual(referenceOrNull(drawn.join('')));
      }),
      { numRuns: runs(3000) },
    );
  });

  it('of a megabyte in one cell are read at once', () => {
    const cell = '""'.repeat(500_000);
    expect(cellsOf(`"${cell}"`)).toEqual([['"'.repeat(500_000)]]);
    expect(readCsv(`"${cell}`)).toMatchObject({ ok: false });
  });
});

function readOrNull(text: string): unknown {
  const records = readCsv(text);
  return records.ok ? filled(records.value.map(({ cells, line }) => [cells, line])) : null;
}

/** Records with something in them: a last line of blanks is a record to one reader, and none to another. */
function filled(records: readonly (readonly [readonly string[], number])[]) {
  return records.filter(([cells]) => cells.some((cell) => cell !== ''));
}

function referenceOrNull(text: string): unknown {
  try {
    const options = { info: true, relax_column_count: true, trim: true, record_delimiter: '\n' } as const;
    const records = parse(text, options) as unknown as { record: string[]; info: { lines: number } }[];
    return filled(records.map(({ record, info }) => [record, info.lines]));
  } catch {
    return null;
  }
}

describe('rows', () => {
  it('are written as an independent writer writes them', () => {
    // The reference leaves a lone carriage return without quotation marks, which no reader can put right.
    const cell = fc.oneof(
      fc.string().filter((text) => !text.includes('\r')),
      fc.constantFrom('=1', '+a', '-b', '@c', '\td', '\uFF1Df'),
      fc.double(),
      fc.constant(null),
    );
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2 }), { minLength: 1 }), (rows: CsvCell[][]) => {
        expect(formatCsv(rows)).toBe(stringify(rows, { record_delimiter: 'windows', escape_formulas: true }));
      }),
    );
  });

  it('are read as they were written', () => {
    const text = fc
      .string({ unit: 'binary' })
      .filter((cell) => cell === cell.trim() && !/^[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/.test(cell));
    fc.assert(
      fc.property(fc.array(fc.array(text, { minLength: 1 }), { minLength: 1 }), (rows) => {
        fc.pre(!rows[0]?.[0]?.startsWith('\uFEFF'));
        expect(cellsOf(formatCsv(rows))).toEqual(rows.map((row) => row.map(printableLines)));
      }),
    );
  });

  it('show what cannot be seen', () => {
    expect(csvCell('a\u202E\u001B[2J\u009Bb\tc\nd')).toBe('"a\\u{202e}\\u{1b}[2J\\u{9b}b\tc\nd"');
  });

  it('hold numbers as they are', () => {
    expect([csvCell(-1.5), csvCell('-1.5'), csvCell(null), csvCell('a"b')]).toEqual([
      '-1.5',
      "'-1.5",
      '',
      '"a""b"',
    ]);
  });
});
