import { describe, expect, test } from 'vitest';
import type { Kind } from '../../../src/registry/kind.ts';
import { changed, essence, readText } from '../good-documents.ts';

// The words of each problem are tested beside the parser of quantities; here, its rule, place and name.
const length = ['job', '30 m', '8:24', '"pathLength"'] as const;
const range = ['polymer', '45..65 Cel', '10:13', 'The value of "glassTransition"'] as const;
const price = ['machine', '1580 EUR', '27:13', 'The value of "price"'] as const;
const column = ['trial', '{commandedFlow: mm3/s', '11:28', '"commandedFlow"'] as const;

describe.each([
  [
    'bare-number',
    length,
    '30',
    '30 has no unit: a length is a number with its unit',
    'If it is in mm, write `30 mm`',
  ],
  [
    'bare-number',
    price,
    '1580',
    '1580 has no unit: a sum of money is a number with its unit',
    'If it is in EUR, write `1580 EUR`',
  ],
  [
    'missing-unit',
    length,
    '"30"',
    '30 has no unit: a length is a number with its unit',
    'If it is in mm, write `30 mm`',
  ],
  ['unknown-unit', length, '30 mmm', 'mmm is not a known unit', 'Did you mean `mm`? Then write `30 mm`'],
  [
    'wrong-dimension',
    length,
    '30 s',
    's is a unit of time, not of length',
    'If the number is a length in mm, write `30 mm`',
  ],
  [
    'wrong-dimension',
    column,
    '{commandedFlow: mm/s',
    'mm/s is a unit of speed, not of volume flow',
    'Write a unit of volume flow, such as `mm3/s`',
  ],
  [
    'not-a-number',
    length,
    'NaN m',
    'NaN m is not a number',
    'Write a number, a space and a unit: `0.45 mm`; leave out what is not known',
  ],
  [
    'not-a-number',
    length,
    '.nan',
    'NaN is not a number',
    'Write a number, a space and a unit: `0.45 mm`; leave out what is not known',
  ],
  [
    'not-a-number',
    length,
    '.inf',
    'Infinity is not a number',
    'Write a number, a space and a unit: `0.45 mm`; leave out what is not known',
  ],
  [
    'endless-number',
    length,
    '30.1234567890123456 m',
    '30.1234567890123456 has 18 digits, more than any measurement carries (15 are read)',
    'Round it: `30.1235 m`',
  ],
  [
    'number-form',
    length,
    '"1,5 m"',
    '1,5 is not in the form that is read: a comma; the decimal sign is a point and thousands are not grouped',
    'Write `1.5 m`',
  ],
  [
    'below-absolute-zero',
    range,
    '-300..65 Cel',
    '-300 Cel is below absolute zero (-273.15 Cel)',
    'Check the sign and the unit; a temperature is written like `235 Cel`',
  ],
  [
    'range-reversed',
    range,
    '65..45 Cel',
    '65..45 Cel runs backwards: its first end is the higher one',
    'If both ends are right, write `45..65 Cel`',
  ],
  [
    'range-expected',
    range,
    '45 Cel',
    '45 Cel is a single value where a range belongs',
    'Write both ends, such as `190..235 Cel`',
  ],
  [
    'single-expected',
    length,
    '20..30 m',
    '20..30 m is a range where a single value belongs',
    'Write one value, such as `0.45 mm`',
  ],
  [
    'not-text',
    length,
    '[30 m]',
    'a list stands where a quantity belongs',
    'Write a number, a space and a unit: `0.45 mm`; leave out what is not known',
  ],
  [
    'not-text',
    length,
    'null',
    'nothing stands where a quantity belongs',
    'Write a number, a space and a unit: `0.45 mm`; leave out what is not known',
  ],
] as const)('units/%s', (rule, [kind, good, place, name], written, message, help) => {
  test(`${written} is the one finding, at its value`, () => {
    expect(readText(kind, changed(kind, good, written)).findings.map(essence)).toEqual([
      `units/${rule} ${place} ${name}: ${message} | ${help}`,
    ]);
  });
});

test('a finding of units carries what was found, what would do and by which standard', () => {
  const [finding] = readText('job', changed('job', '30 m', '30 s')).findings;
  expect(finding).toMatchObject({
    severity: 'error',
    pointer: '/features/travel/pathLength',
    found: 's',
    allowed: 'length in mm, um, cm, m, [in_i], [mil_i], [ft_i]',
    source: 'UCUM, case-sensitive codes; schema/quantity.schema.json',
  });
});

test('the interval of a statement is named with its owner', () => {
  const [finding] = readText('filament', changed('filament', '42.8..46.1', '46.1..42.8')).findings;
  expect(finding?.message).toMatch(/^The interval of "meltFlow": 46\.1\.\.42\.8 mm3\/s runs backwards/);
});

test('a statement deep in a document is named by its nearest key', () => {
  const [finding] = readText('machine', changed('machine', '300 Cel', '300')).findings;
  expect(finding?.message).toMatch(/^The value of "temperatureLimit": 300 has no unit/);
});

test('conditions of a statement are quantities too', () => {
  const [finding] = readText(
    'filament',
    changed('filament', 'nozzleTemperature: 230 Cel', 'nozzleTemperature: 230 mm'),
  ).findings;
  expect(finding).toMatchObject({
    rule: 'units/wrong-dimension',
    pointer: '/meltFlow/0/at/nozzleTemperature',
  });
});

describe('what is read is in canonical units', () => {
  const data = (kind: Kind, from: string, to: string) =>
    readText(kind, changed(kind, from, to)).profile?.data;

  test.each([
    ['job', '30 m,', '30 m,', { features: { travel: { pathLength: 30_000 } } }],
    ['filament', '1.24 g/cm3', '1240 kg/m3', { density: [{ value: 0.00124 }] }],
    [
      'filament',
      '200..235 Cel',
      '"392..455 [degF]"',
      { nozzleTemperature: [{ value: { low: 200, high: 235 } }] },
    ],
    ['policy', 'flowMargin: 10 %', 'flowMargin: 0.1 1', { flowMargin: 0.1 }],
    ['machine', '1580 EUR', '1580 EUR', { price: [{ value: { amount: 1580, currency: 'EUR' } }] }],
    ['trial', 'mm3/s,', 'mm³/s,', { observations: { columns: { commandedFlow: 'mm3/s' } } }],
  ] as const)('%s: %s as %s', (kind, from, to, expected) => {
    expect(data(kind, from, to)).toMatchObject(expected);
  });
});
