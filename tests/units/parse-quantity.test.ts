import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Dimension, dimensions } from '../../src/units/dimension.ts';
import { parseMoney, parseQuantity, parseUnit } from '../../src/units/parse-quantity.ts';
import type { QuantityProblem } from '../../src/units/quantity-problem.ts';
import { runs } from '../property-runs.ts';
import { anyDimension, anyNumberText, anyScrap, anySpaces, anyUnit, spellingOf } from './texts.ts';

function read(text: unknown, dimension: Dimension) {
  const result = parseQuantity(text, dimension);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

function problem(text: unknown, dimension: Dimension): QuantityProblem {
  const result = parseQuantity(text, dimension);
  if (result.ok) throw new Error(`${String(text)} was read`);
  return result.error;
}

describe('reading', () => {
  test.each([
    ['75 mm3/s', 'volumeFlow', 75],
    ['3600 mm3/min', 'volumeFlow', 60],
    ['36 cm3/h', 'volumeFlow', 10],
    ['1.24 g/cm3', 'density', 0.00124],
    ['1240 kg/m3', 'density', 0.00124],
    ['230 Cel', 'temperature', 230],
    ['446 [degF]', 'temperature', 230],
    ['300 K', 'temperature', 26.85],
    ['5 K', 'temperatureDifference', 5],
    ['5 Cel', 'temperatureDifference', 5],
    ['9 [degF]', 'temperatureDifference', 5],
    ['93 %', 'ratio', 0.93],
    ['0.93 1', 'ratio', 0.93],
    ['0.19 W/m/K', 'thermalConductivity', 0.00019],
    ['1800 J/kg/K', 'specificHeat', 1.8],
    ['1 [in_i]', 'length', 25.4],
    ['180 deg', 'angle', 180],
    ['10 bar', 'pressure', 1],
    ['52 dB(A)', 'soundLevel', 52],
    ['1.5e3 mm', 'length', 1500],
    ['-0.4 mm', 'length', -0.4],
  ] as const)('%s as %s is %d in the canonical unit', (text, dimension, value) => {
    expect(read(text, dimension).value).toBe(value);
  });

  test('3.141592653589793 rad is one digit too many, 3.14159265358979 rad is 180 degrees', () => {
    expect(problem('3.141592653589793 rad', 'angle').code).toBe('endlessNumber');
    expect(read('3.14159265358979 rad', 'angle').value).toBeCloseTo(180, 10);
  });

  test('one unit, typed in two ways, is one value', () => {
    expect(read('3600 mm/min', 'speed').value).toBe(read('60 mm/s', 'speed').value);
  });

  test('a print symbol is read and its canonical spelling given', () => {
    expect(read('75 mm³/s', 'volumeFlow')).toMatchObject({
      value: 75,
      written: { number: '75', unit: 'mm³/s' },
      canonicalSpelling: '75 mm3/s',
      isCanonicalSpelling: false,
    });
  });

  test.each(['5%', '5  %', ' 5 %', '5\u00a0%', '5\u202f%'])(
    '%j is read as 5 percent, but is not how it is spelt',
    (text) => {
      expect(read(text, 'ratio')).toMatchObject({
        value: 0.05,
        canonicalSpelling: '5 %',
        isCanonicalSpelling: false,
      });
    },
  );

  test('the digits stay as they were written', () => {
    expect(read('75.0 mm3/s', 'volumeFlow')).toMatchObject({
      canonicalSpelling: '75.0 mm3/s',
      isCanonicalSpelling: true,
    });
  });

  test('the weighting of a sound level stays with its unit', () => {
    expect(read('52 dBA', 'soundLevel').unit.code).toBe('dB[SPL]{A}');
    expect(read('52 dB[SPL]', 'soundLevel').unit.code).toBe('dB[SPL]');
  });

  test('absolute zero itself is a temperature', () => {
    expect(read('-459.67 [degF]', 'temperature').value).toBe(-273.15);
  });
});

describe('problems', () => {
  test.each([
    [75, 'volumeFlow', 'bareNumber', '75 mm3/s'],
    ['75', 'volumeFlow', 'missingUnit', '75 mm3/s'],
    ['0.51', 'ratio', 'missingUnit', '0.51 %'],
    ['75 mm/s', 'volumeFlow', 'wrongDimension', '75 mm3/s'],
    ['5 g', 'acceleration', 'wrongDimension', '5 mm/s2'],
    ['0.5 1', 'speed', 'wrongDimension', '0.5 mm/s'],
    ['75 mm^3/s', 'volumeFlow', 'unknownUnit', '75 mm3/s'],
    ['75 mm3/sec', 'volumeFlow', 'unknownUnit', '75 mm3/s'],
    ['230 degC', 'temperature', 'unknownUnit', '230 Cel'],
    ['230 C', 'temperature', 'unknownUnit', '230 Cel'],
    ['52 dB', 'soundLevel', 'unknownUnit', '52 dB[SPL]{A}'],
    ['75 $', 'money', 'unknownUnit', '75 USD'],
    ['75 parsnips', 'volumeFlow', 'unknownUnit', '75 mm3/s'],
    ['NaN', 'mass', 'notANumber', '1.49 g'],
    ['.nan', 'mass', 'notANumber', '1.49 g'],
    ['-.inf', 'mass', 'notANumber', '1.49 g'],
    ['Infinity g', 'mass', 'notANumber', '1.49 g'],
    [Number.NaN, 'mass', 'notANumber', '1.49 g'],
    [Number.POSITIVE_INFINITY, 'mass', 'notANumber', '1.49 g'],
    ['fast', 'speed', 'notANumber', '250 mm/s'],
    ['', 'speed', 'notANumber', '250 mm/s'],
    ['€ 75', 'money', 'notANumber', '349 EUR'],
    ['0,45 mm', 'length', 'numberForm', '0.45 mm'],
    ['1,240 g', 'mass', 'numberForm', '1240 g'],
    ['1,240 g', 'mass', 'numberForm', '1.240 g'],
    ['1.234,5 g', 'mass', 'numberForm', '1234.5 g'],
    ['1,234.5 g', 'mass', 'numberForm', '1234.5 g'],
    ['1.234.567 g', 'mass', 'numberForm', '1234567 g'],
    ['1_000 g', 'mass', 'numberForm', '1000 g'],
    ['1 000 g', 'mass', 'numberForm', '1000 g'],
    ["1'000 g", 'mass', 'numberForm', '1000 g'],
    ['0x1F g', 'mass', 'numberForm', '31 g'],
    ['.5 mm', 'length', 'numberForm', '0.5 mm'],
    ['5. mm', 'length', 'numberForm', '5 mm'],
    ['+5 mm', 'length', 'numberForm', '5 mm'],
    ['007 g', 'mass', 'numberForm', '7 g'],
    ['\u22125 Cel', 'temperature', 'numberForm', '-5 Cel'],
    ['1e999 mm', 'length', 'numberForm', '0.45 mm'],
    ['0.33333333333333333 mm', 'length', 'endlessNumber', '0.333333 mm'],
    [`${'1'.repeat(400)} mm`, 'length', 'endlessNumber', '0.45 mm'],
    ['-300 Cel', 'temperature', 'belowAbsoluteZero', '235 Cel'],
    ['-1 K', 'temperature', 'belowAbsoluteZero', '235 Cel'],
    ['190..235 Cel', 'temperature', 'singleExpected', '235 Cel'],
    ['190-235 Cel', 'temperature', 'singleExpected', '235 Cel'],
    [null, 'mass', 'notText', '1.49 g'],
    [true, 'mass', 'notText', '1.49 g'],
    [['5 g'], 'mass', 'notText', '1.49 g'],
    [{ value: 5 }, 'mass', 'notText', '1.49 g'],
  ] as const)('%j as %s is %s, and the help writes `%s`', (text, dimension, code, example) => {
    const found = problem(text, dimension);
    expect(found.code).toBe(code);
    expect(found.help).toContain(`\`${example}\``);
  });

  test('a unit of something else is named with what it measures, and the units that would do are listed', () => {
    const found = problem('75 mm/s', 'volumeFlow');
    expect(found.message).toBe('mm/s is a unit of speed, not of volume flow');
    expect(found.allowed).toMatch(/^volume flow in mm3\/s, mm3\/min, /);
  });

  test('a unit that is near one of another dimension is not offered as an answer', () => {
    expect(problem('75 celsius', 'volumeFlow').help).toContain(
      '`Cel` comes near, but is a unit of temperature',
    );
  });

  test('each kind of slip in a number is named', () => {
    const messages = [
      '0,45 mm',
      '1_0 mm',
      '0x1F mm',
      '1 000 mm',
      '.5 mm',
      '5. mm',
      '+5 mm',
      '05 mm',
      '1e999 mm',
    ].map((text) => problem(text, 'length').message.replace(/^.*: /, ''));
    expect(new Set(messages).size).toBe(messages.length);
  });

  test('following the help of a slip leads to a text that is read', () => {
    for (const text of [
      '0,45 mm',
      '1_000 mm',
      '.5 mm',
      '5. mm',
      '+5 mm',
      '75',
      '75 mm^3/s',
      '0.333333333333333333 mm',
    ]) {
      const { help } = problem(text, text.includes('mm^3') ? 'volumeFlow' : 'length');
      const rewritten = /`(-?\d[^`]*)`/.exec(help)?.[1];
      expect(parseQuantity(rewritten, text.includes('mm^3') ? 'volumeFlow' : 'length').ok, help).toBe(true);
    }
  });
});

describe('hostile texts', () => {
  test('control and direction characters are escaped and the quote is cut at 40 characters', () => {
    const found = problem(`75 \u0000\u202e\u001b[31m${'x'.repeat(500)}`, 'mass');
    expect(found.found).toMatch(/^\\u\{0\}\\u\{202e\}\\u\{1b\}\[31mx+…$/);
    expect(found.found.length).toBeLessThan(80);
  });

  test('half a surrogate pair is escaped', () => {
    expect(problem('75 \ud83d', 'mass').found).toBe('\\u{d83d}');
  });

  test('a line end inside is not a space', () => {
    expect(problem('75\nmm3/s', 'volumeFlow').code).toBe('unknownUnit');
  });

  test('no problem grows with its text or holds a character that does not print', () => {
    const text = fc.oneof(
      anyScrap,
      anyScrap.map((scrap) => scrap.repeat(50)),
      anyScrap.map((scrap) => `75 ${scrap}`),
    );
    fc.assert(
      fc.property(text, anyDimension, (written, dimension) => {
        const result = parseQuantity(written, dimension);
        if (result.ok) return;
        const { message, found, allowed, help } = result.error;
        expect(Math.max(message.length, found.length, help.length)).toBeLessThan(700);
        expect(`${message}${found}${allowed}${help}`).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      }),
      { numRuns: runs(2000) },
    );
  });

  test.each([' ', '0', '1', '.', '1.', '9,', '-', 'e', '1 ', '..', '1..', 'mm3/', '\u00a0', '1e', '0.0'])(
    'a hundred thousand characters of %j are answered',
    (piece) => {
      const text = piece.repeat(100_000 / piece.length);
      expect(dimensions.map((dimension) => parseQuantity(text, dimension).ok)).not.toContain(true);
    },
  );
});

describe('laws', () => {
  test('every number with every spelling of every unit is read, with or without a space where none is needed', () => {
    const written = fc
      .tuple(anyNumberText, anyUnit)
      .chain(([number, unit]) =>
        fc.tuple(fc.constant(number), fc.constant(unit), anySpaces, spellingOf(unit)),
      );
    fc.assert(
      fc.property(written, ([number, unit, gap, spelling]) => {
        const text = `${number}${gap === '' && /^\d/.test(spelling) ? ' ' : gap}${spelling}`;
        const result = parseQuantity(text, unit.dimension);
        if (result.ok) expect(result.value).toMatchObject({ unit, written: { number, unit: spelling } });
        else expect(result.error.code).toBe('belowAbsoluteZero');
      }),
      { numRuns: runs(2000) },
    );
  });

  test('the canonical spelling means the same and is its own canonical spelling', () => {
    const written = fc
      .tuple(anyNumberText, anyUnit)
      .chain(([number, unit]) =>
        spellingOf(unit).map((spelling) => ({ text: `${number} ${spelling}`, unit })),
      );
    fc.assert(
      fc.property(written, ({ text, unit: { dimension } }) => {
        const first = parseQuantity(text, dimension);
        if (!first.ok) return;
        const second = read(first.value.canonicalSpelling, dimension);
        expect(second.value).toBe(first.value.value);
        expect(second.isCanonicalSpelling).toBe(true);
      }),
    );
  });
});

describe('a unit alone', () => {
  test('a code or an alias is read', () => {
    expect(parseUnit('mm³/s', 'volumeFlow')).toMatchObject({ ok: true, value: { code: 'mm3/s' } });
  });

  test.each([
    ['mm/s', 'wrongDimension'],
    ['mm^3/s', 'unknownUnit'],
    ['', 'unknownUnit'],
    [3, 'notText'],
    [{}, 'notText'],
    [null, 'notText'],
  ] as const)('%j as a unit of volume flow is %s, and the help names `mm3/s`', (text, code) => {
    const result = parseUnit(text, 'volumeFlow');
    expect(result).toMatchObject({ ok: false, error: { code } });
    expect(result.ok ? '' : result.error.help).toContain('`mm3/s`');
  });
});

describe('money', () => {
  test('an amount keeps its currency', () => {
    expect(parseMoney('349.90 EUR')).toEqual({ ok: true, value: { amount: 349.9, currency: 'EUR' } });
  });

  test('a currency is needed', () => {
    expect(parseMoney('349')).toMatchObject({ ok: false, error: { code: 'missingUnit' } });
  });
});
