import { describe, expect, test } from 'vitest';
import { fittingMethod } from '../../../src/bench/fitting-method.ts';
import type { MethodName } from '../../../src/bench/method-facts.ts';
import { methodNames } from '../../../src/bench/method-facts.ts';
import { methodOf } from '../../../src/bench/methods.ts';
import { readBenchSheet } from '../../../src/bench/sheet/bench-sheet.ts';
import { readSheetText } from '../../../src/bench/sheet/sheet-table.ts';
import { exampleRuns, exampleSheet } from '../method-examples.ts';

function reduce(name: MethodName, text: string) {
  const method = methodOf(name);
  const observations = readBenchSheet(text, method);
  return observations.ok ? method.reduce(observations.value, exampleRuns[name]) : observations;
}

function codes(name: MethodName, text: string): string[] {
  const reduced = reduce(name, text);
  return reduced.ok ? [] : reduced.error.map(({ code }) => code);
}

describe.each(methodNames)('the sheet of a %s', (name) => {
  const sheet = exampleSheet(name);
  const [header = '', ...rows] = sheet.trim().split('\n');
  const whole = reduce(name, sheet);

  test('is reduced as it stands', () => {
    expect(whole).toMatchObject({ ok: true });
  });

  test('gives every quantity that the method says it finds', () => {
    const found = whole.ok ? whole.value.results.map(({ quantity }) => quantity) : [];
    const all = Object.keys(methodOf(name).results);
    // A sheet of these holds one of several settings, or parts of a machine, each with results of its own.
    const own: Partial<Record<MethodName, readonly string[]>> = {
      settingLadder: ['retractionLength'],
      setPointCheck: ['nozzleTemperatureOffset', 'offsetSlope', 'reachedTemperature', 'settlingTime'],
    };
    expect([...new Set(found)]).toEqual(own[name] ?? all);
    expect(all).toEqual(expect.arrayContaining(found));
  });

  test('is reduced alike with a byte-order mark, blank rows and the line ends of a spreadsheet', () => {
    expect(
      reduce(
        name,
        `\ufeff${[header, '', ...rows, ',,'.slice(0, header.split(',').length - 1), ''].join('\r\n')}`,
      ),
    ).toEqual(whole);
  });

  test('gives the same numbers in every run', () => {
    expect(reduce(name, sheet)).toEqual(whole);
  });

  test('is refused with decimal commas', () => {
    const [cell = '', ...others] = (rows[0] ?? '').split(',');
    const comma = cell.includes('.') ? cell.replace('.', ',') : `${cell},5`;
    const row = [`"${comma}"`, ...others].join(',');
    expect(codes(name, [header, row, ...rows.slice(1)].join('\n'))).toEqual(['decimalComma']);
  });

  test('is reduced alike with semicolons or tabulators between its cells', () => {
    expect(reduce(name, sheet.replaceAll(',', ';'))).toEqual(whole);
    expect(reduce(name, sheet.replaceAll(',', '\t'))).toEqual(whole);
  });

  test('is reduced alike with decimal commas between semicolons', () => {
    expect(reduce(name, sheet.replaceAll(',', ';').replaceAll('.', ','))).toEqual(whole);
  });

  test('is the one whose columns tell the method', () => {
    const table = readSheetText(sheet);
    expect(table.ok && fittingMethod(table.value)).toMatchObject({
      ok: true,
      value: { ok: true, value: { method: name } },
    });
  });

  test('is refused with a unit of something else in its header', () => {
    expect(codes(name, sheet.replace(/\[[^,]*\]/, '[W]'))).toEqual(['wrongUnit']);
  });

  test('is refused without its last column', () => {
    const cut = sheet
      .trim()
      .split('\n')
      .map((line) => line.split(',').slice(0, -1).join(','));
    const refused = codes(name, cut.join('\n'));
    expect(name === 'referencePrint' ? ['missingColumn'] : refused).toEqual(['missingColumn']);
  });

  test('is refused with an empty cell, and the row is named', () => {
    const broken = [header, ...rows.slice(0, -1), (rows.at(-1) ?? '').replace(/[^,]+$/, '')].join('\n');
    const reduced = reduce(name, broken);
    expect(reduced).toMatchObject({ ok: false, error: [{ code: 'emptyCell', row: rows.length + 1 }] });
  });

  test('is refused when it was pasted twice', () => {
    expect(codes(name, [header, ...rows, ...rows].join('\n'))).toContain('repeatedTable');
  });

  test('is refused with a header and no rows', () => {
    expect(codes(name, header)).toEqual(['emptySheet']);
  });

  test('is refused with a reading that is no number', () => {
    expect(
      codes(name, [header, (rows[0] ?? '').replace(/[^,]+$/, 'n/a'), ...rows.slice(1)].join('\n')),
    ).toEqual(['notANumber']);
  });
});

describe.each(methodNames.filter((name) => name !== 'referencePrint'))('a %s', (name) => {
  test('needs more than two rows', () => {
    const [header = '', ...rows] = exampleSheet(name).trim().split('\n');
    expect(codes(name, [header, ...rows.slice(0, 2)].join('\n'))).toContain('tooFewSteps');
  });
});

describe('a reading of zero', () => {
  test.each<[MethodName, string]>([
    ['flowLadder', 'notPositive'],
    ['diameterSurvey', 'notPositive'],
    ['temperatureSweep', 'notPositive'],
    ['layerTime', 'badGrade'],
    ['dryingCurve', 'notPositive'],
    ['referencePrint', 'notPositive'],
  ])('is refused by a %s', (name, code) => {
    const [header = '', first = '', ...rows] = exampleSheet(name).trim().split('\n');
    expect(codes(name, [header, first.replace(/[^,]+$/, '0'), ...rows].join('\n'))).toContain(code);
  });

  test('is a ripple below the gauge for a contourLadder', () => {
    expect(reduce('contourLadder', exampleSheet('contourLadder').replace('40,4\n', '40,0\n')).ok).toBe(true);
  });
});

describe('swapped columns', () => {
  /** The readings under each other's heads, as when the cells were typed in another order. */
  function swapped(name: MethodName): string {
    const [header = '', ...rows] = exampleSheet(name).trim().split('\n');
    const turned = rows.map((row) => {
      const [first = '', second = '', ...rest] = row.split(',');
      return [second, first, ...rest].join(',');
    });
    return [header, ...turned].join('\n');
  }

  test.each<[MethodName, string]>([
    ['flowLadder', 'tooFewSteps'],
    ['diameterSurvey', 'notPositive'],
    ['temperatureSweep', 'implausibleReading'],
    ['layerTime', 'badGrade'],
    ['dryingCurve', 'notPositive'],
    ['soundLevel', 'implausibleReading'],
  ])('are noticed by a %s', (name, code) => {
    expect(codes(name, swapped(name))).toContain(code);
  });

  test('are what a ladder of a single flow is asked about', () => {
    const refused = reduce('flowLadder', swapped('flowLadder'));
    expect(refused.ok ? [] : refused.error.map(({ help }) => help)).toEqual([
      expect.stringContaining('check whether two columns are swapped'),
    ]);
  });
});

describe('a log of a controller instead of settings', () => {
  test.each<[MethodName, string]>([
    ['flowLadder', 'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]\n#,1000,2.9\n'],
    ['contourLadder', 'contourSpeed [mm/s],grade [{count}]\n#,4\n'],
    ['layerTime', 'layerTime [s],grade [{count}]\n#,4\n'],
    ['temperatureSweep', 'nozzleTemperature [Cel],grade [{count}]\n#,4\n'],
  ])('is refused by a %s', (name, form) => {
    const [header = '', row = ''] = form.split('\n');
    const rows = Array.from({ length: 201 }, (_, index) => row.replace('#', `${200 + index / 10}`));
    expect(codes(name, [header, ...rows].join('\n'))).toEqual(['tooManyValues']);
  });

  test('is refused with thousands of readings at a few flows', () => {
    const rows = Array.from({ length: 1001 }, (_, index) => `${20 + 5 * (index % 6)},1000,2.9${index % 9}`);
    const sheet = ['commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]', ...rows].join('\n');
    expect(codes('flowLadder', sheet)).toEqual(['tooManyReadings']);
  });
});

describe('a sheet far larger than a run', () => {
  const header = 'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]';
  const many = (row: string, count = 5001) => `${header}\n${`${row}\n`.repeat(count)}`;

  test.each([
    ['of whole rows', many('20,500,1.4')],
    ['of short rows', many('1')],
    ['of long rows', many('1,2,3,4')],
    ['of words', many('x,y,z')],
    ['behind a line that names the separator', `sep=,\n${many('20,500,1.4')}`],
    ['with a heading in each of hundreds of columns', `${'"x [mm]",'.repeat(101)}\n1\n`],
  ])('%s is refused in one sentence', (_, sheet) => {
    expect(codes('flowLadder', sheet)).toEqual(['sheetTooLarge']);
  });

  test('is not read beyond the row that is one too many', () => {
    expect(codes('flowLadder', `${many('1')}"`)).toEqual(['sheetTooLarge']);
    expect(codes('flowLadder', `${many('1', 4999)}"`)).toEqual(['malformedSheet']);
  });

  test('only by its blank rows is read as if they were not there', () => {
    const read = readSheetText(`${many(',,', 20_000)}20,500,1.4\n`);
    expect(read.ok && read.value.rows.map(({ row }) => row)).toEqual([20_002]);
  });

  test('as large as a run may be is read to its end', () => {
    const read = readSheetText(`sep=,\n${many('20,500,1.4', 5000)}`);
    expect(read.ok && read.value.rows.length).toBe(5000);
  });
});
