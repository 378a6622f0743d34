import { describe, expect, test } from 'vitest';
import { canonicalTypeName } from '../../src/units/canonical.ts';
import { aQuantityOf, dimensionInfo, dimensions } from '../../src/units/dimension.ts';
import { parseQuantity, parseRange } from '../../src/units/parse-quantity.ts';
import { findUnit } from '../../src/units/unit-table.ts';

describe.each(dimensions)('%s', (dimension) => {
  const info = dimensionInfo[dimension];

  test('its examples are read and in canonical spelling', () => {
    expect(parseQuantity(info.example, dimension)).toMatchObject({
      ok: true,
      value: { isCanonicalSpelling: true },
    });
    expect(parseRange(info.exampleRange, dimension)).toMatchObject({
      ok: true,
      value: { isCanonicalSpelling: true },
    });
  });

  test('its usual unit is the code of one of its units', () => {
    expect(findUnit(info.usualUnit, dimension)?.code).toBe(info.usualUnit);
  });
});

test.each(dimensions.filter((dimension) => dimension !== 'money'))(
  'the canonical unit of %s converts to itself',
  (dimension) => {
    const code = dimensionInfo[dimension].canonicalUnit ?? '';
    expect(findUnit(code, dimension)).toMatchObject({ code, factor: 1, offset: 0 });
  },
);

test('money has no canonical unit', () => {
  expect(dimensionInfo.money.canonicalUnit).toBeUndefined();
});

test('each dimension has a type name of its own', () => {
  expect(new Set(Object.values(canonicalTypeName)).size).toBe(dimensions.length);
});

test('a description takes the article it needs', () => {
  expect([aQuantityOf('volumeFlow'), aQuantityOf('acceleration')]).toEqual([
    'a volume flow',
    'an acceleration',
  ]);
});
