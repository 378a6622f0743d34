import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BenchProblem } from '../../../src/bench/bench-problem.ts';
import { readBenchSheet } from '../../../src/bench/sheet/bench-sheet.ts';
import type { Observations } from '../../../src/bench/sheet/observations.ts';
import { largestSheet } from '../../../src/bench/sheet/sheet-table.ts';

const plan = {
  columns: { commandedFlow: 'volumeFlow', feedLength: 'length', extrudedMass: 'mass' },
} as const;
const header = 'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]';

function read(text: string): Observations {
  const sheet = readBenchSheet(text, plan);
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.error));
  return sheet.value;
}

function problemsOf(text: string): readonly BenchProblem[] {
  const sheet = readBenchSheet(text, plan);
  return sheet.ok ? [] : sheet.error;
}

describe('reads', () => {
  test('numbers below headers of name and unit, with their lines', () => {
    expect(read(`${header}\n20,500,1.49\n28,500,1.48\n`)).toEqual({
      columns: { commandedFlow: [20, 28], feedLength: [500, 500], extrudedMass: [1.49, 1.48] },
      rows: [2, 3],
    });
  });

  test('other units, as canonical ones', () => {
    const sheet = read('extrudedMass [mg],commandedFlow [cm3/min],feedLength [[in_i]]\n1490,1.2,20\n');
    expect(sheet.columns.extrudedMass).toEqual([1.49]);
    expect(sheet.columns.commandedFlow).toEqual([20]);
    expect(sheet.columns.feedLength).toEqual([508]);
  });

  test('print symbols of units', () => {
    expect(read('commandedFlow [mm³/s],feedLength [mm],extrudedMass [g]\n20,500,1.49').rows).toEqual([2]);
  });

  test.each([
    ['a byte order mark', `\uFEFF${header}\n20,500,1.49\n`],
    ['line ends of another system', `${header}\r\n20,500,1.49\r\n`],
    ['no line end at the end', `${header}\n20,500,1.49`],
    ['spaces around cells', `${header}\n 20 , 500 ,1.49 \n`],
    ['quoted cells', `"commandedFlow [mm3/s]","feedLength [mm]",extrudedMass [g]\n"20",500,"1.49"\n`],
  ])('%s', (_, text) => {
    expect(read(text).columns).toEqual({ commandedFlow: [20], feedLength: [500], extrudedMass: [1.49] });
  });

  test('past blank rows, keeping the lines of the others', () => {
    expect(read(`${header}\n\n20,500,1.49\n,,\n28,500,1.48\n\n`).rows).toEqual([3, 5]);
  });

  test('what was written, whatever the numbers', () => {
    const reading = fc.double({ min: 1e-3, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(reading, reading, reading), { minLength: 1 }), (rows) => {
        const sheet = read([header, ...rows.map((row) => row.join(','))].join('\n'));
        expect(sheet.columns.extrudedMass).toEqual(rows.map((row) => row[2]));
      }),
    );
  });
});

describe('refuses', () => {
  test.each([
    ['an empty file', '', 'emptySheet'],
    ['blank lines only', '\n\n', 'emptySheet'],
    ['a header alone', `${header}\n`, 'emptySheet'],
    ['an unclosed quotation mark', `${header}\n20,500,"1.49\n`, 'malformedSheet'],
    ['semicolons that are not closed', `${header.replaceAll(',', ';')}\n20;500;"1,49\n`, 'malformedSheet'],
    ['a file of another size', 'x'.repeat(largestSheet + 1), 'sheetTooLarge'],
  ])('%s', (_, text, code) => {
    expect(problemsOf(text)).toMatchObject([{ code }]);
  });

  test('a misspelt column, with the one that was meant', () => {
    const problems = problemsOf('comandedFlow [mm3/s],feedLength [mm],extrudedMass [g]\n20,500,1.49');
    expect(problems.map(({ code }) => code)).toEqual(['unknownColumn', 'missingColumn']);
    expect(problems[0]).toMatchObject({ found: 'comandedFlow', row: 1 });
    expect(problems[0]?.help).toContain('did you mean `commandedFlow`?');
  });

  test('a header without a unit', () => {
    const [problem] = problemsOf('commandedFlow [mm3/s],feedLength,extrudedMass [g]\n20,500,1.49');
    expect(problem).toMatchObject({ code: 'malformedHeader', found: 'feedLength', row: 1 });
    expect(problem?.help).toContain('`feedLength [mm]`');
  });

  test('a unit of something else, with one that would do', () => {
    const [problem] = problemsOf('commandedFlow [mm/s],feedLength [mm],extrudedMass [g]\n20,500,1.49');
    expect(problem).toMatchObject({ code: 'wrongUnit', found: 'mm/s', row: 1 });
    expect(problem?.message).toContain('commandedFlow');
    expect(problem?.help).toContain('mm3/s');
  });

  test('a column that is missing, or there twice', () => {
    expect(problemsOf('commandedFlow [mm3/s],feedLength [mm]\n20,500')).toMatchObject([
      { code: 'missingColumn', row: 1 },
    ]);
    expect(problemsOf(`${header},extrudedMass [g]\n20,500,1.49,1.49`)).toMatchObject([
      { code: 'repeatedColumn', found: 'extrudedMass' },
    ]);
  });

  test.each([
    ['20,500,1.49,lost', 'raggedRow', 'one cell each'],
    ['20,500', 'raggedRow', 'one cell each'],
    ['20,500,1,49', 'raggedRow', 'a decimal comma splits a number'],
    ['20,500,"1,49"', 'decimalComma', '1.49'],
    ['20,500,', 'emptyCell', 'delete the row'],
    ['20,500,1.49 g', 'notANumber', 'the number alone'],
    ['20,500,broke off', 'notANumber', 'the number alone'],
    ['20,500,NaN', 'notANumber', 'the number alone'],
    ['20,500,0x1F', 'notANumber', 'the number alone'],
  ])('the row %s', (row, code, help) => {
    const problems = problemsOf(`${header}\n20,500,1.49\n${row}\n`);
    expect(problems).toMatchObject([{ code, row: 3 }]);
    expect(problems[0]?.help).toContain(help);
  });

  test('every bad cell of a sheet at once', () => {
    const rows = problemsOf(`${header}\n20,x,1.49\n28,500,y\n`).map(({ row }) => row);
    expect(rows).toEqual([2, 3]);
  });

  test('names that are no columns but come with every object', () => {
    expect(problemsOf('constructor [mm],feedLength [mm],extrudedMass [g]\n1,2,3')[0]).toMatchObject({
      code: 'unknownColumn',
    });
  });
});

test('no text makes it throw', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => void readBenchSheet(text, plan)));
  const cell = fc.constantFrom(',', '"', '\n', '\r', ';', '[', ']', 'g', '1', '.', ' ', '\uFEFF');
  fc.assert(fc.property(fc.array(cell), (cells) => void readBenchSheet(header + cells.join(''), plan)));
});

test.each([
  ['1e999', 'commandedFlow [mm3/s]'],
  ['1e308', 'commandedFlow [cm3/s]'],
  ['3e115', 'commandedFlow [mm3/s]'],
])('the number %s below %s is none that can be reckoned with', (cell, heading) => {
  const text = `${heading},feedLength [mm],extrudedMass [g]\n${cell},500,1.49\n`;
  expect(readBenchSheet(text, plan)).toMatchObject({ ok: false, error: [{ code: 'notANumber', row: 2 }] });
});
