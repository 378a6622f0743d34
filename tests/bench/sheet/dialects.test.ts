import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ReadSheet, readSheet } from '../../../src/bench/sheet/bench-sheet.ts';
import { formatPlainSheet, isPlainSheet } from '../../../src/bench/sheet/plain-sheet.ts';
import { readSheetText } from '../../../src/bench/sheet/sheet-table.ts';
import { decodeText } from '../../../src/text/decode-text.ts';
import { runs } from '../../property-runs.ts';

const plan = {
  columns: { commandedFlow: 'volumeFlow', feedLength: 'length', extrudedMass: 'mass' },
} as const;

/** Ways in which people and their programs write the same heading. */
const headings = [
  ['commandedFlow [mm3/s]', 'Commanded flow [mm³/s]', 'flow (mm3/s)', 'flow mm3/s', 'COMMANDED FLOW / mm3/s'],
  ['feedLength [mm]', 'feed length (mm)', 'Length in mm', 'length mm', 'feed_length_mm'],
  ['extrudedMass [g]', 'extruded mass (g)', 'mass g', 'Mass / g', 'extruded-mass [g]'],
] as const;

/** How a table is written. */
interface Dialect {
  readonly separator: ',' | ';' | '\t';
  readonly decimal: '.' | ',';
  readonly group: '' | ' ' | '\u00A0' | '\u202F' | "'";
  readonly lineEnd: '\n' | '\r\n' | '\r';
  readonly encoding: 'utf8' | 'utf8 with mark' | 'utf16le' | 'utf16be' | 'latin1';
  readonly namesSeparator: boolean;
  readonly quotes: boolean;
  readonly notes: readonly string[] | null;
  readonly headings: readonly [number, number, number];
  readonly emptyColumns: number;
}

type Row = readonly [flow: string, length: string, mass: string];

const index = fc.nat({ max: 4 });

const dialect: fc.Arbitrary<Dialect> = fc
  .record({
    separator: fc.constantFrom(',', ';', '\t'),
    decimal: fc.constantFrom('.', ','),
    group: fc.constantFrom('', '', ' ', '\u00A0', '\u202F', "'"),
    lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
    encoding: fc.constantFrom('utf8', 'utf8 with mark', 'utf16le', 'utf16be', 'latin1'),
    namesSeparator: fc.boolean(),
    quotes: fc.boolean(),
    notes: fc.option(
      fc.array(fc.constantFrom('', 'drive clicked', 'größer', 'a; b, c\td'), { minLength: 1 }),
    ),
    headings: fc.tuple(index, index, index),
    emptyColumns: fc.nat({ max: 2 }),
  })
  .map((drawn) => ({
    ...drawn,
    // Between commas decimals have points; a narrow space is no sign of Latin-1.
    decimal: drawn.separator === ',' ? '.' : drawn.decimal,
    group: drawn.encoding === 'latin1' && drawn.group === '\u202F' ? '\u00A0' : drawn.group,
  }));

const row: fc.Arbitrary<Row> = fc.tuple(
  fc.integer({ min: 1, max: 99 }).map(String),
  fc.integer({ min: 100, max: 5_000_000 }).map(String),
  fc.integer({ min: 1, max: 999 }).map((cents) => (cents / 100).toFixed(2)),
);

const table = fc.array(row, { minLength: 1, maxLength: 12 });

function written(rows: readonly Row[], form: Dialect): Uint8Array {
  const head = form.headings.map((chosen, column) => headings[column]?.[chosen] ?? '');
  const note = (line: number) => (form.notes === null ? [] : [form.notes[line % form.notes.length] ?? '']);
  const lines = [
    [...head, ...(form.notes === null ? [] : ['Note'])],
    ...rows.map((cells, line) => [...cells.map((cell) => numberIn(cell, form)), ...note(line)]),
  ];
  const text = lines.map((cells) =>
    [...cells, ...Array<string>(form.emptyColumns).fill('')]
      .map((cell) => cellIn(cell, form))
      .join(form.separator),
  );
  const all =
    [...(form.namesSeparator ? [`sep=${form.separator}`] : []), ...text].join(form.lineEnd) + form.lineEnd;
  return bytesOf(all, form.encoding);
}

function numberIn(cell: string, { decimal, group }: Dialect): string {
  const [whole = '', decimals] = cell.split('.');
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, group);
  return decimals === undefined ? grouped : `${grouped}${decimal}${decimals}`;
}

function cellIn(cell: string, { quotes, separator }: Dialect): string {
  return quotes || cell.includes(separator) ? `"${cell}"` : cell;
}

function bytesOf(text: string, encoding: Dialect['encoding']): Uint8Array {
  if (encoding === 'utf8') return Buffer.from(text);
  if (encoding === 'utf8 with mark') return Buffer.from(`\uFEFF${text}`);
  if (encoding === 'latin1') return Buffer.from(text, 'latin1');
  const little = Buffer.from(`\uFEFF${text}`, 'utf16le');
  return encoding === 'utf16le' ? little : little.swap16();
}

function read(bytes: Uint8Array): ReadSheet {
  const decoded = decodeText(bytes);
  if (decoded === null) throw new Error('no text');
  const sheet = readSheet(decoded.text, plan);
  if (!sheet.ok) throw new Error(JSON.stringify([sheet.error, decoded.text]));
  return sheet.value;
}

describe('a table', () => {
  test('has the same readings in every dialect, to the last digit', () => {
    fc.assert(
      fc.property(table, dialect, (rows, form) => {
        const sheet = read(written(rows, form));
        expect(sheet.observations.columns).toEqual({
          commandedFlow: rows.map(([flow]) => Number(flow)),
          feedLength: rows.map(([, length]) => Number(length)),
          extrudedMass: rows.map(([, , mass]) => Number(mass)),
        });
        expect(sheet).toMatchObject({ separator: form.separator, decimal: form.decimal });
        expect(sheet.notes.length > 0).toBe(
          form.notes?.slice(0, rows.length).some((note) => note !== '') ?? false,
        );
      }),
      { numRuns: runs(500) },
    );
  });

  test('is written as a plain sheet with the same readings', () => {
    fc.assert(
      fc.property(table, dialect, (rows, form) => {
        const sheet = read(written(rows, form));
        const parsed = readSheetText(decodeText(written(rows, form))?.text ?? '');
        if (!parsed.ok) throw new Error('no table');
        const plain = formatPlainSheet(parsed.value, sheet);
        const again = read(Buffer.from(plain));
        expect(again.observations.columns).toEqual(sheet.observations.columns);
        expect(again.notes.map(({ text }) => text)).toEqual(sheet.notes.map(({ text }) => text));
        expect(isPlainSheet(again, 'UTF-8')).toBe(true);
      }),
      { numRuns: runs(200) },
    );
  });
});

const header = 'commandedFlow [mm3/s];feedLength [mm];extrudedMass [g]';

function problemsOf(text: string) {
  const sheet = readSheet(text, plan);
  return sheet.ok ? [] : sheet.error;
}

describe('a number that can be read in two ways', () => {
  test.each([
    [
      'a lone comma between tabulators',
      '20\t500\t1,234',
      '1,234',
      ['1.234 with a decimal comma', '1234 with a decimal point'],
    ],
    ['a lone point', '20;500;1.234', '1.234', ['1234 with a decimal comma', '1.234 with a decimal point']],
    [
      'a comma beside decimal points',
      '20;1,000;1.49',
      '1,000',
      ['1 with a decimal comma', '1000 with a decimal point'],
    ],
    [
      'a point beside decimal commas',
      '20;1.000;1,49',
      '1.000',
      ['1000 with a decimal comma', '1 with a decimal point'],
    ],
  ])('is refused with both readings: %s', (_, row, found, readings) => {
    const head = row.includes('\t') ? header.replaceAll(';', '\t') : header;
    const [problem, ...others] = problemsOf(`${head}\n${row}\n`);
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ code: 'ambiguousNumber', found, row: 2 });
    for (const reading of readings) expect(problem?.message).toContain(reading);
  });

  test('is refused in quotation marks between commas', () => {
    const text = `${header.replaceAll(';', ',')}\n20,"1,000",1.49\n`;
    expect(problemsOf(text)).toMatchObject([{ code: 'ambiguousNumber', found: '1,000', row: 2 }]);
  });

  test.each([
    ['20;1.000.000;1,49', [1_000_000], [1.49]],
    ['20;1.000,5;1,234', [1000.5], [1.234]],
    ['20;1,000.5;1.234', [1000.5], [1.234]],
    ['20;500;0,995', [500], [0.995]],
    // Where decimals have points, programs put commas between the cells.
    ['20;500;1,234', [500], [1.234]],
  ])('is none where others leave no doubt: %s', (row, feedLength, extrudedMass) => {
    const sheet = readSheet(`${header}\n${row}\n`, plan);
    expect(sheet).toMatchObject({
      ok: true,
      value: { observations: { columns: { feedLength, extrudedMass } } },
    });
  });

  test('is read as the user says', () => {
    const text = `${header}\n20;500;1,234\n`.replaceAll(';', '\t');
    const masses = (['.', ','] as const).map((sign) => {
      const sheet = readSheet(text, plan, sign);
      return sheet.ok ? sheet.value.observations.columns.extrudedMass : null;
    });
    expect(masses).toEqual([[1234], [1.234]]);
  });

  test('tells a sheet with both decimal signs', () => {
    expect(problemsOf(`${header}\n20;500;1,49\n22;500;1.48\n`)).toMatchObject([
      {
        code: 'ambiguousNumber',
        found: '1,49',
        row: 2,
        message: expect.stringContaining('`1.48` in line 3'),
      },
    ]);
  });
});

describe('a row between commas', () => {
  const commas = header.replaceAll(';', ',');

  test('with decimal commas is refused with what it can be read as', () => {
    const [problem] = problemsOf(`${commas}\n20,500,1,49\n`);
    expect(problem).toMatchObject({ code: 'raggedRow', row: 2 });
    expect(problem?.help).toContain('`20.500 | 1 | 49` or `20 | 500.1 | 49` or `20 | 500 | 1.49`');
  });

  test('whose note is a number is refused, since it may be decimals', () => {
    expect(problemsOf(`${commas},note\n20,500,1,49\n`)).toMatchObject([
      { code: 'ambiguousNumber', found: '49', row: 2 },
    ]);
  });

  test('may leave out the note at its end', () => {
    expect(readSheet(`${commas},note\n20,500,1.49\n22,500,1.48,loud\n`, plan)).toMatchObject({
      ok: true,
      value: { notes: [{ row: 3, text: 'loud' }] },
    });
  });
});

describe('a heading', () => {
  test('that fits several columns is refused with all of them', () => {
    const survey = {
      columns: { position: 'length', firstDiameter: 'length', secondDiameter: 'length' },
    } as const;
    const sheet = readSheet('position [mm],diameter [mm],secondDiameter [mm]\n1,1.75,1.75', survey);
    expect(sheet).toMatchObject({
      ok: false,
      error: [
        {
          code: 'ambiguousColumn',
          message: expect.stringContaining('`firstDiameter` or as `secondDiameter`'),
        },
      ],
    });
  });

  test('takes the one column that has its unit', () => {
    const timing = { columns: { moveLength: 'length', moves: 'count', duration: 'time' } } as const;
    const sheet = readSheet('Move (mm);Moves;duration s\n100;10;5\n', timing);
    expect(sheet).toMatchObject({
      ok: true,
      value: { observations: { columns: { moves: [10], duration: [5] } } },
    });
  });

  test('twice for one column is refused', () => {
    expect(problemsOf(`${header};mass g\n20;500;1,49;1,5\n`)).toMatchObject([{ code: 'repeatedColumn' }]);
  });
});

test.each([
  ['{"rows": [1]}', 'a JSON file'],
  ['kind: trial\nid: x\n', 'a YAML file'],
  ['---\n# a comment\nkind: trial\n', 'a YAML file'],
  ['<!doctype html><title>x</title>', 'a page of HTML or XML'],
])('%j says what it is', (text, kind) => {
  expect(problemsOf(text)).toMatchObject([{ code: 'otherKind', found: kind }]);
});

test('no text makes it throw', () => {
  const cell = fc.constantFrom(
    ';',
    '\t',
    ',',
    '"',
    '\n',
    '\r',
    '.',
    '1',
    '23',
    '456',
    '-',
    ' ',
    "'",
    'e',
    'note',
    '\uFEFF',
    'sep=;',
  );
  fc.assert(
    fc.property(fc.array(cell), fc.constantFrom(header, `${header};note`, ''), (cells, head) => {
      const sheet = readSheet(`${head}\n${cells.join('')}`, plan);
      const numbers = sheet.ok ? Object.values(sheet.value.observations.columns).flat() : [];
      expect(numbers.every(Number.isFinite)).toBe(true);
    }),
    { numRuns: runs(2000) },
  );
});

test('a sheet of the largest size is read or refused at once', () => {
  for (const piece of ['1,', '1;', ' ', '1 000', '"', '\n', "1'", '[', '(']) {
    problemsOf(`${header}\n${piece.repeat(Math.floor(200_000 / piece.length))}`);
    problemsOf(piece.repeat(Math.floor(200_000 / piece.length)));
  }
});
