import { describe, expect, it, test } from 'vitest';
import { documentInPrint, inPrint } from '../../src/units/in-print.ts';
import { printedUnit } from '../../src/units/print-symbols.ts';
import { units } from '../../src/units/unit-table.ts';

describe('inPrint', () => {
  it.each([
    [
      'the bed goes to 110 Cel, the filament needs 50..60 Cel',
      'the bed goes to 110 °C, the filament needs 50–60 °C',
    ],
    ['42.7 mm3/s (41.9..43.4 mm3/s)', '42.7 mm³/s (41.9–43.4 mm³/s)'],
    ['0.243 mm3/s more per K, 0.016 mm3/s/K', '0.243 mm³/s more per K, 0.016 mm³/(s·K)'],
    ['1.9 J/g/K from 25 Cel.', '1.9 J/(g·K) from 25 °C.'],
    ['66 dB[SPL]{A} at 45 deg, 3 {count}', '66 dB(A) at 45°, 3'],
    ['-20..-5 Cel', '-20 to -5 °C'],
    ['-20..5 Cel', '-20 to 5 °C'],
    ['5..-20 Cel runs backwards', '5 to -20 °C runs backwards'],
    ['0.2..0.45 mm', '0.2–0.45 mm'],
    ['50..100 %', '50–100 %'],
    ['rows 3..5', 'rows 3–5'],
    ['(70..100 Cel)', '(70–100 °C)'],
    ['75 [in_i]/min and 446 [degF]', '75 in/min and 446 °F'],
  ])('%s: %s', (written, printed) => {
    expect(inPrint(written)).toBe(printed);
  });

  it.each([
    'write `75 mm3/s`, or --at "235 Cel"',
    'commandedFlow [mm3/s]',
    'hs-0.4, 26-0711, lantern-230, 1.0.0',
    'main..work, v1..v2, 1.0.0..2.0.0',
    'the files a2 and b3, 5 mm3-blocks',
    'a unit such as Cel or mm3/s',
  ])('leaves "%s" as it is', (written) => {
    expect(inPrint(written)).toBe(written);
  });
});

test('every unit is printed behind a number as it is printed alone', () => {
  const codes = units.map(({ code }) => code).filter((code) => code !== '1');
  for (const code of codes) {
    const [printed, gap] = [printedUnit(code), ['', '°'].includes(printedUnit(code)) ? '' : ' '];
    expect([code, inPrint(`5 ${code}, then`)]).toEqual([code, `5${gap}${printed}, then`]);
  }
});

test('no bracket of a code is left in print', () => {
  expect(units.map(({ code }) => printedUnit(code)).filter((printed) => /[[\]{}]/.test(printed))).toEqual([]);
});

test('a document changes in its texts and units, and keeps its code', () => {
  const { title, blocks } = documentInPrint({
    title: '230 Cel',
    blocks: [
      { kind: 'code', text: 'value: 230 Cel', language: 'yaml' },
      {
        kind: 'table',
        columns: [{ heading: 'flow', unit: 'mm3/s', align: 'right' }],
        groups: [{ heading: null, rows: [['5 mm3/s']] }],
      },
    ],
  });
  expect(title).toBe('230 °C');
  expect(blocks).toMatchObject([
    { text: 'value: 230 Cel' },
    { columns: [{ unit: 'mm³/s' }], groups: [{ rows: [['5 mm³/s']] }] },
  ]);
});
