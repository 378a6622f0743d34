import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Dimension } from '../../src/units/dimension.ts';
import { parseQuantity, parseRange } from '../../src/units/parse-quantity.ts';
import { runs } from '../property-runs.ts';
import { anyDimension, anyNumberText, anyScrap, anyUnit } from './texts.ts';

function problem(text: unknown, dimension: Dimension) {
  const result = parseRange(text, dimension);
  if (result.ok) throw new Error(`${String(text)} was read`);
  return result.error;
}

describe('reading', () => {
  test.each([
    ['190..235 Cel', 'temperature', 190, 235],
    ['374..455 [degF]', 'temperature', 190, 235],
    ['-5..-2 K', 'temperatureDifference', -5, -2],
    ['5..5 mm', 'length', 5, 5],
    ['0..1 1', 'ratio', 0, 1],
    ['1200..4500 mm3/min', 'volumeFlow', 20, 75],
  ] as const)('%s as %s', (text, dimension, low, high) => {
    expect(parseRange(text, dimension)).toMatchObject({
      ok: true,
      value: { low, high, isCanonicalSpelling: true },
    });
  });

  test.each(['190 .. 235 Cel', '190..235Cel', '190..235 °C', ' 190..235 Cel'])(
    '%j is read, and rewritten',
    (text) => {
      expect(parseRange(text, 'temperature')).toMatchObject({
        ok: true,
        value: { low: 190, high: 235, canonicalSpelling: '190..235 Cel', isCanonicalSpelling: false },
      });
    },
  );
});

describe('problems', () => {
  test.each([
    ['235..190 Cel', 'rangeReversed', '190..235 Cel'],
    ['190 Cel', 'rangeExpected', '190..235 Cel'],
    ['190-235 Cel', 'rangeExpected', '190..235 Cel'],
    ['190–235 Cel', 'rangeExpected', '190..235 Cel'],
    ['190 to 235 Cel', 'rangeExpected', '190..235 Cel'],
    ['190...235 Cel', 'rangeExpected', '190..235 Cel'],
    ['190…235 Cel', 'rangeExpected', '190..235 Cel'],
    ['191 Cel..234 °C', 'rangeExpected', '191..234 Cel'],
    ['190 Cel..500 K', 'rangeExpected', '190..235 Cel'],
    ['190..235', 'missingUnit', '190..235 Cel'],
    ['190..235 mm', 'wrongDimension', '190..235 Cel'],
    ['190 mm..235 Cel', 'wrongDimension', '190 Cel'],
    ['190..235 degC', 'unknownUnit', '190..235 Cel'],
    ['190,5..235 Cel', 'numberForm', '190.5..235 Cel'],
    ['190..235,5 Cel', 'numberForm', '190..235.5 Cel'],
    ['.5..1 Cel', 'numberForm', '0.5..1 Cel'],
    ['190..235.33333333333333333 Cel', 'endlessNumber', '190..235.333 Cel'],
    ['190.33333333333333333..235 Cel', 'endlessNumber', '190.333..235 Cel'],
    ['-300..20 Cel', 'belowAbsoluteZero', '235 Cel'],
    ['-300 Cel', 'rangeExpected', '190..235 Cel'],
    ['..235 Cel', 'notANumber', '235 Cel'],
    ['190..', 'notANumber', '235 Cel'],
    ['..', 'notANumber', '235 Cel'],
    ['hot', 'notANumber', '235 Cel'],
    [190, 'bareNumber', '190 Cel'],
    [[190, 235], 'notText', '235 Cel'],
  ] as const)('%j is %s, and the help writes `%s`', (text, code, example) => {
    const found = problem(text, 'temperature');
    expect(found.code).toBe(code);
    expect(found.help).toContain(`\`${example}\``);
  });

  test('two units are not turned into one by guessing', () => {
    expect(problem('190 Cel..500 K', 'temperature').help).toBe(
      'write both ends in one unit, such as `190..235 Cel`',
    );
  });
});

describe('laws', () => {
  test('a range holds what its ends hold as single values', () => {
    fc.assert(
      fc.property(anyNumberText, anyNumberText, anyUnit, (one, other, { code, dimension }) => {
        const [low, high] = [one, other].sort((a, b) => Number(a) - Number(b));
        const range = parseRange(`${low}..${high} ${code}`, dimension);
        const ends = [low, high].map((number) => parseQuantity(`${number} ${code}`, dimension));
        const values = ends.map((end) => (end.ok ? end.value.value : undefined));
        if (range.ok) expect([range.value.low, range.value.high]).toEqual(values);
        else expect(values).toContain(undefined);
      }),
    );
  });

  test('no text is both a single value and a range', () => {
    fc.assert(
      fc.property(anyScrap, anyDimension, (text, dimension) => {
        expect(parseQuantity(text, dimension).ok && parseRange(text, dimension).ok).toBe(false);
      }),
    );
  });

  test('any text is answered without an exception, briefly and printably', () => {
    fc.assert(
      fc.property(anyScrap, anyScrap, anyDimension, (left, right, dimension) => {
        const result = parseRange(`${left}..${right}`, dimension);
        if (result.ok) return;
        const { message, help } = result.error;
        expect(Math.max(message.length, help.length)).toBeLessThan(700);
        expect(message + help).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      }),
      { numRuns: runs(2000) },
    );
  });

  test.each(['..', '1..', '1-', ' ..', '1 ', '0.', '…'])(
    'a hundred thousand characters of %j are answered',
    (piece) => {
      expect(parseRange(piece.repeat(100_000 / piece.length), 'ratio').ok).toBe(false);
    },
  );
});

test('a range holds its ends and its unit as they were written', () => {
  expect(parseRange('190.0..235 °C', 'temperature')).toMatchObject({
    ok: true,
    value: { written: { low: '190.0', high: '235', unit: '°C' } },
  });
});

test.each([
  ['235..190 Cel', '235..190 Cel runs backwards: its first end is the higher one'],
  ['230 Cel', '230 Cel is a single value where a range belongs'],
  [
    '190-235 Cel',
    '190-235 Cel is not in the form of a range: the ends of a temperature are joined by two points',
  ],
  [
    '190 Cel..235 Cel',
    '190 Cel..235 Cel has a unit at its first end: the one at the end of a range serves both',
  ],
])('of %j is said what is wrong', (written, message) => {
  expect(parseRange(written, 'temperature')).toMatchObject({ ok: false, error: { message } });
});

test('a first end with a unit that nobody knows is told by that unit', () => {
  expect(parseRange('190 parsnips..235 Cel', 'temperature')).toMatchObject({
    ok: false,
    error: { code: 'unknownUnit', found: expect.stringContaining('parsnips') },
  });
});
