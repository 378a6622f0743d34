import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Dimension } from '../../src/units/dimension.ts';
import { formatNumber, formatQuantity, formatRange, toUnit } from '../../src/units/format-quantity.ts';
import { parseQuantity, parseRange } from '../../src/units/parse-quantity.ts';
import { runs } from '../property-runs.ts';
import { anyUnit, canonicalValue } from './texts.ts';

function read(text: string, dimension: Dimension): number {
  const result = parseQuantity(text, dimension);
  if (!result.ok) throw new Error(`${text}: ${result.error.message}`);
  return result.value.value;
}

describe('writing', () => {
  test.each([
    [75, 'volumeFlow', {}, '75 mm3/s'],
    [0.00124, 'density', { unit: 'g/cm3' }, '1.24 g/cm3'],
    [230, 'temperature', { unit: '[degF]' }, '446 [degF]'],
    [0.05, 'ratio', { unit: '%' }, '5 %'],
    [0.05, 'ratio', {}, '0.05 1'],
    [349.9, 'money', { unit: 'EUR', decimals: 2 }, '349.90 EUR'],
    [1 / 3, 'length', {}, '0.333333333333333 mm'],
    [1 / 3, 'length', { decimals: 2 }, '0.33 mm'],
    [1234.5, 'length', { significantDigits: 2 }, '1200 mm'],
    [12, 'length', { decimals: 1 }, '12.0 mm'],
    [-0.001, 'length', { decimals: 1 }, '0.0 mm'],
    [-0, 'length', {}, '0 mm'],
    [0.1 + 0.2, 'length', {}, '0.3 mm'],
    [1e15, 'length', {}, '1e+15 mm'],
    [1e21, 'length', {}, '1e+21 mm'],
    [1e-120, 'length', {}, '0 mm'],
  ] as const)('%d as %s with %j is %s', (value, dimension, options, text) => {
    expect(formatQuantity(value, dimension, options)).toBe(text);
  });

  test('a range names its unit once', () => {
    expect(formatRange(190, 235, 'temperature')).toBe('190..235 Cel');
    expect(formatRange(20, 75, 'volumeFlow', { unit: 'mm3/min' })).toBe('1200..4500 mm3/min');
  });

  test('decimals that would not be read back give way to 15 significant digits', () => {
    expect(formatNumber(123456789012.3, { decimals: 9 })).toBe('123456789012.3');
  });

  test('what is not a number, or has no unit, is a bug of the caller', () => {
    expect(() => formatQuantity(Number.NaN, 'length')).toThrow(RangeError);
    expect(() => formatQuantity(1e300, 'length')).toThrow(RangeError);
    expect(() => formatQuantity(5, 'length', { unit: 'g' })).toThrow(RangeError);
    expect(() => formatQuantity(5, 'money')).toThrow(RangeError);
  });

  test('a number can be had in another unit without its text', () => {
    expect([toUnit(60, 'speed', 'mm/min'), toUnit(26.85, 'temperature', 'K')]).toEqual([3600, 300]);
  });
});

describe('there and back', () => {
  const unitAndValue = anyUnit.chain((unit) =>
    canonicalValue(unit.dimension).map((value) => ({ unit, value })),
  );

  // 15 significant digits are kept, so at most half a unit of the fifteenth is lost; a shifted scale keeps 1e-10.
  test('a value comes back to within its fifteenth digit', () => {
    fc.assert(
      fc.property(unitAndValue, ({ unit: { code, dimension, offset }, value }) => {
        const back = read(formatQuantity(value, dimension, { unit: code }), dimension);
        const tolerance = Math.max(6e-15 * Math.abs(value), offset === 0 ? 0 : 1e-10);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(tolerance);
      }),
      { numRuns: runs(5000) },
    );
  });

  test('and exactly from then on', () => {
    fc.assert(
      fc.property(unitAndValue, ({ unit: { code, dimension }, value }) => {
        const once = read(formatQuantity(value, dimension, { unit: code }), dimension);
        expect(read(formatQuantity(once, dimension, { unit: code }), dimension)).toBe(once);
      }),
      { numRuns: runs(5000) },
    );
  });

  test('a range comes back with both ends', () => {
    fc.assert(
      fc.property(
        anyUnit,
        fc.integer({ min: 0, max: 1e6 }),
        fc.integer({ min: 0, max: 1e6 }),
        (unit, one, other) => {
          const [low, high] = one < other ? [one, other] : [other, one];
          const range = parseRange(
            formatRange(low, high, unit.dimension, { unit: unit.code }),
            unit.dimension,
          );
          expect(range.ok && Math.abs(range.value.low - low) <= 1e-9 * (1 + low)).toBe(true);
          expect(range.ok && Math.abs(range.value.high - high) <= 1e-9 * (1 + high)).toBe(true);
        },
      ),
    );
  });
});
