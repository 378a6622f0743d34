// Source of every check here: The Unified Code for Units of Measure (UCUM), version 2.2, as carried out by the
// reference library @lhncbc/ucum-lhc of the Lister Hill National Center for Biomedical Communications.
import library from '@lhncbc/ucum-lhc';
import { describe, expect, test } from 'vitest';
import { type Dimension, dimensionInfo, dimensions } from '../../src/units/dimension.ts';
import { type Unit, units } from '../../src/units/unit-table.ts';

const ucum = library.UcumLhcUtils.getInstance();
const measured = units.filter((unit) => unit.dimension !== 'money');

/**
 * UCUM sections 21 and 22: Cel and [degF] are special units, points on a scale. Their intervals have codes of their
 * own, K and [degR], against which the differences are checked.
 */
const intervalCode = new Map([
  ['Cel', 'K'],
  ['[degF]', '[degR]'],
]);

function referenceCode(unit: Unit): string {
  return unit.dimension === 'temperatureDifference' ? (intervalCode.get(unit.code) ?? unit.code) : unit.code;
}

function canonicalOf(dimension: Dimension): string {
  const { canonicalUnit } = dimensionInfo[dimension];
  if (canonicalUnit === undefined) throw new Error(`${dimension} has no canonical unit`);
  return canonicalUnit;
}

function convert(from: string, value: number, to: string): number | null {
  return ucum.convertUnitTo(from, value, to).toVal;
}

function expectClose(actual: number | null, expected: number) {
  expect(actual).not.toBeNull();
  expect(Math.abs(Number(actual) - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
}

test('there are units of every dimension to check', () => {
  expect(new Set(measured.map((unit) => unit.dimension)).size).toBe(dimensions.length - 1);
});

describe.each(measured)('$code as $dimension', (unit) => {
  test('is a valid code, spelt as UCUM spells it', () => {
    expect(ucum.validateUnitString(unit.code)).toMatchObject({ status: 'valid', ucumCode: unit.code });
  });

  // Two values, so that factor and offset are seen apart. 1000 is far above the absolute zero of every scale.
  test('has the factor and the offset of UCUM, hence also its dimension', () => {
    const to = canonicalOf(unit.dimension);
    const code = referenceCode(unit);
    expectClose(convert(code, 1000, to), 1000 * unit.factor + unit.offset);
    expectClose(convert(code, 2000, to), 2000 * unit.factor + unit.offset);
  });
});

// UCUM counts these as one kind: a ratio and a count are both pure numbers, a temperature and a difference are both
// kelvins, and a sound pressure level is the logarithm of a pressure.
const oneKindInUcum = [
  ['count', 'ratio'],
  ['pressure', 'soundLevel'],
  ['temperature', 'temperatureDifference'],
].map((pair) => pair.join(' '));

test('no two dimensions are commensurable in UCUM, but for three pairs', () => {
  const kinds = dimensions.filter((dimension) => dimension !== 'money');
  const commensurable = kinds.flatMap((one, index) =>
    kinds
      .slice(index + 1)
      .filter((other) => ucum.convertUnitTo(canonicalOf(one), 1, canonicalOf(other)).status === 'succeeded')
      .map((other) => [one, other].sort().join(' ')),
  );
  expect(commensurable.sort()).toEqual(oneKindInUcum);
});

// UCUM section 6: an annotation carries no meaning, so the weighting does not change the unit.
test('the A-weighted level has the unit of the plain level', () => {
  expectClose(convert('dB[SPL]', 60, 'dB[SPL]{A}'), 60);
});
