import { describe, expect, test } from 'vitest';
import type { Dimension } from '../../src/units/dimension.ts';
import { looseNumber, rewriteNumber } from '../../src/units/number-problem.ts';
import { parseQuantity, parseRange, parseUnit } from '../../src/units/parse-quantity.ts';
import { requireUnit } from '../../src/units/unit-table.ts';

/** What a reader is told of a text that is no quantity: what is wrong, and what to do. */
function told(text: unknown, dimension: Dimension): readonly [message: string, help: string] {
  const result = parseQuantity(text, dimension);
  if (result.ok) throw new Error(`${String(text)} was read`);
  return [result.error.message, result.error.help];
}

const asText = 'write a number, a space and a unit: `1.49 g`; leave out what is not known';

describe('a value that is no text', () => {
  test.each([
    [null, 'nothing stands where a quantity belongs'],
    [undefined, 'nothing stands where a quantity belongs'],
    [['5 g'], 'a list stands where a quantity belongs'],
    [{ value: 5 }, 'a map stands where a quantity belongs'],
    [true, 'true stands where a quantity belongs'],
    [Number.NaN, 'NaN is not a number'],
    [Number.NEGATIVE_INFINITY, '-Infinity is not a number'],
    ['', 'a number is missing'],
    ['  ', 'a number is missing'],
    ['much', 'much is not a number'],
  ])('%j: %s', (text, message) => {
    expect(told(text, 'mass')).toEqual([message, asText]);
  });

  test('as a unit', () => {
    const message = (unit: unknown) => {
      const read = parseUnit(unit, 'mass');
      return read.ok ? '' : `${read.error.message}; ${read.error.help}`;
    };
    expect(message({})).toBe('a structure is not a text that names a unit; write a unit, such as `g`');
    expect(message(3)).toBe('3 is not a text that names a unit; write a unit, such as `g`');
  });
});

describe('a number without its unit', () => {
  test('may be in the usual one', () => {
    const words = [
      '75 has no unit: a volume flow is a number with its unit',
      'if it is in mm3/s, write `75 mm3/s`',
    ];
    expect(told(75, 'volumeFlow')).toEqual(words);
    expect(told('75', 'volumeFlow')).toEqual(words);
  });
});

describe('a unit of something else', () => {
  test('is told with all that it measures', () => {
    expect(told('5 K', 'mass')).toEqual([
      'K is a unit of temperature and temperature difference, not of mass',
      'if the number is a mass in g, write `5 g`',
    ]);
  });

  test('alone is told with a unit that would do', () => {
    const read = parseUnit('mm/s', 'acceleration');
    expect(read).toMatchObject({
      error: {
        message: 'mm/s is a unit of speed, not of acceleration',
        found: 'mm/s',
        allowed: 'acceleration in mm/s2, cm/s2, m/s2, [in_i]/s2, [g]',
        help: 'write a unit of acceleration, such as `mm/s2`',
      },
    });
  });

  test('needs its space where it is the 1', () => {
    expect(told('0.5 1', 'speed')[0]).toBe('1 is a unit of ratio, not of speed');
    expect(told('0123456789012345671', 'ratio')[0]).toMatch(/^0123456789012345671 is not in the form/);
  });
});

describe('a unit that nobody knows', () => {
  test('may be one of the asked dimension', () => {
    expect(told('75 mm^3/s', 'volumeFlow')).toEqual([
      'mm^3/s is not a known unit',
      'did you mean `mm3/s`? Then write `75 mm3/s`',
    ]);
  });

  test('may be one of another dimension, which would not do', () => {
    expect(told('75 celsius', 'volumeFlow')[1]).toBe(
      '`Cel` comes near, but is a unit of temperature; write a unit of volume flow, for example `75 mm3/s`',
    );
  });

  test('may be nothing at all', () => {
    expect(told('75 parsnips', 'volumeFlow')[1]).toBe('write a unit of volume flow, for example `75 mm3/s`');
  });

  test('may stand alone', () => {
    const read = parseUnit('mm^3/s', 'volumeFlow');
    expect(read.ok ? '' : read.error.help).toBe('did you mean `mm3/s`? Then write `mm3/s`');
  });
});

describe('a number in another form', () => {
  test.each([
    ['0,45 mm', 'a comma; the decimal sign is a point and thousands are not grouped', '`0.45 mm`'],
    [
      '1,240 mm',
      'a comma; the decimal sign is a point and thousands are not grouped',
      '`1.240 mm` or `1240 mm`',
    ],
    ['0x1F mm', 'hexadecimal digits', '`31 mm`'],
    ['1_0 mm', 'a sign between its digits', '`10 mm`'],
    ['1 000 mm', 'a space between its digits', '`1000 mm`'],
    ['+5 mm', 'a plus sign', '`5 mm`'],
    ['\u22125 mm', 'a typographic minus sign; the hyphen is read', '`-5 mm`'],
    ['1.2.3 mm', 'more than one decimal point', '`123 mm`'],
    ['.5 mm', 'no digit before the decimal point', '`0.5 mm`'],
    ['-.5 mm', 'no digit before the decimal point', '`-0.5 mm`'],
    ['5. mm', 'no digit after the decimal point', '`5 mm`'],
    ['5.e3 mm', 'no digit after the decimal point', '`5e3 mm`'],
    ['007 mm', 'a leading zero', '`7 mm`'],
    ['1e999 mm', 'an exponent of more than two digits', 'a number such as `0.45 mm`'],
    ['0,45 cm', 'a comma; the decimal sign is a point and thousands are not grouped', '`0.45 cm`'],
    ['0,45 furlong', 'a comma; the decimal sign is a point and thousands are not grouped', '`0.45 mm`'],
  ])('%s: %s', (text, flaw, help) => {
    const number = text.slice(0, text.lastIndexOf(' '));
    expect(told(text, 'length')).toEqual([
      `${number} is not in the form that is read: ${flaw}`,
      `write ${help}`,
    ]);
  });

  test('is rewritten in its place in a range', () => {
    const help = (text: string) => {
      const read = parseRange(text, 'temperature');
      return read.ok ? '' : read.error.help;
    };
    expect(help('190..235,5 Cel')).toBe('write `190..235.5 Cel`');
    expect(help('190,5..235 Cel')).toBe('write `190.5..235 Cel`');
  });

  test('with too many digits is to be rounded', () => {
    expect(told('-0.33333333333333333e1 mm', 'length')).toEqual([
      '-0.33333333333333333e1 has 18 digits, more than any measurement carries (15 are read)',
      'round it: `-3.33333 mm`',
    ]);
    expect(told(`${'1'.repeat(400)} mm`, 'length')[1]).toBe('round it: `0.45 mm`');
  });
});

describe('what a number in another form may stand for', () => {
  test.each([
    ['1,240', ['1.240', '1240']],
    ['1,24', ['1.24']],
    ['12,3456', ['12.3456']],
    ['1,234,567', ['1234567']],
    ['1.234,5', ['1234.5']],
    ['1,234.5', ['1234.5']],
    ['1.234.567,8', ['1234567.8']],
    ['1,234,567.8', ['1234567.8']],
    ['1.234.567', ['1234567']],
    ['1.5', ['1.5']],
    ["1'000", ['1000']],
    ['1’000_000', ['1000000']],
    ['1\u00a0000\u2009000\u202f000', ['1000000000']],
    ['+5', ['5']],
    ['\u22125', ['-5']],
    ['-.5', ['-0.5']],
    ['.5', ['0.5']],
    ['5.', ['5']],
    ['5.e2', ['5e2']],
    ['007', ['7']],
    ['-007', ['-7']],
    ['000', ['0']],
    ['0.5', ['0.5']],
    ['0x1F', ['31']],
    ['-0x1F', []],
    ['+0x1F', []],
    ['\u22120x1F', []],
    [`0x${'F'.repeat(20)}`, []],
    ['1e999', []],
  ])('%s: %j', (found, readings) => {
    expect(rewriteNumber(found)).toEqual(readings);
  });
});

describe('what looks like a number at the start of a text', () => {
  test.each([
    ['190..235 Cel', '190'],
    ['1.5 mm', '1.5'],
    ['5. mm', '5.'],
    ['-1,000.5e-3 mm', '-1,000.5e-3'],
    ['1e5', '1e5'],
    ['0x1Fg', '0x1F'],
    ['fast', ''],
  ])('%s: %j', (text, number) => {
    expect(looseNumber(text)).toBe(number);
  });
});

describe('a temperature below absolute zero', () => {
  test('is told in its own unit', () => {
    expect(told('-500 °F', 'temperature')).toEqual([
      '-500 [degF] is below absolute zero (-273.15 Cel)',
      'check the sign and the unit; a temperature is written like `235 Cel`',
    ]);
  });

  test('is none for a difference, or another quantity', () => {
    expect(parseQuantity('-300 K', 'temperatureDifference').ok).toBe(true);
    expect(parseQuantity('-300 mm', 'length').ok).toBe(true);
  });
});

test('a range where a single value belongs is told as it was written', () => {
  expect(told('190-235 Cel', 'temperature')).toEqual([
    '190-235 Cel is a range where a single value belongs',
    'write one value, such as `235 Cel`',
  ]);
});

test('a code that the program chose wrongly is a bug, and named', () => {
  expect(() => requireUnit('mm', 'mass')).toThrow('mm is not a unit of mass');
});
