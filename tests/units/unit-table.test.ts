import { describe, expect, test } from 'vitest';
import { dimensions } from '../../src/units/dimension.ts';
import { dimensionsOfUnit, findUnit, requireUnit, units, unitsOf } from '../../src/units/unit-table.ts';

describe.each(dimensions)('%s', (dimension) => {
  test('no spelling stands for two of its units', () => {
    const spellings = unitsOf(dimension).flatMap((unit) => [unit.code, ...unit.aliases]);
    expect(spellings.filter((spelling, index) => spellings.indexOf(spelling) !== index)).toEqual([]);
  });
});

test('over all dimensions a spelling stands for one code', () => {
  const codes = new Map<string, Set<string>>();
  for (const unit of units) {
    for (const spelling of [unit.code, ...unit.aliases]) {
      codes.set(spelling, (codes.get(spelling) ?? new Set()).add(unit.code));
    }
  }
  expect([...codes].filter(([, meanings]) => meanings.size > 1)).toEqual([]);
});

test('only temperatures and their differences share spellings', () => {
  const shared = units.map((unit) => dimensionsOfUnit(unit.code)).filter((found) => found.length > 1);
  expect(new Set(shared.map((found) => found.join(' ')))).toEqual(
    new Set(['temperature temperatureDifference']),
  );
});

test('no spelling holds a space, or begins like a longer number', () => {
  const spellings = units.flatMap((unit) => [unit.code, ...unit.aliases]);
  expect(spellings.filter((spelling) => /\s|^[.,+-]|^[eE]\d/.test(spelling))).toEqual([]);
  expect(spellings.filter((spelling) => /^\d/.test(spelling))).toEqual(['1']);
});

test.each([
  ['°C', 'temperature', 'Cel'],
  ['℃', 'temperature', 'Cel'],
  ['°F', 'temperature', '[degF]'],
  ['°C', 'temperatureDifference', 'Cel'],
  ['mm³/s', 'volumeFlow', 'mm3/s'],
  ['cm³/min', 'volumeFlow', 'cm3/min'],
  ['mm²', 'area', 'mm2'],
  ['mm³', 'volume', 'mm3'],
  ['mm/s²', 'acceleration', 'mm/s2'],
  ['m/s²', 'acceleration', 'm/s2'],
  ['\u00b5m', 'length', 'um'],
  ['\u03bcm', 'length', 'um'],
  ['in', 'length', '[in_i]'],
  ['g/cm³', 'density', 'g/cm3'],
  ['kg/m³', 'density', 'kg/m3'],
  ['lb/in³', 'density', '[lb_av]/[cin_i]'],
  ['W/(m·K)', 'thermalConductivity', 'W/m/K'],
  ['W/(m.K)', 'thermalConductivity', 'W/m/K'],
  ['W/(m·°C)', 'thermalConductivity', 'W/m/K'],
  ['J/(g·K)', 'specificHeat', 'J/g/K'],
  ['J/(g.K)', 'specificHeat', 'J/g/K'],
  ['cal/(g·°C)', 'specificHeat', 'cal_th/g/K'],
  ['dB(A)', 'soundLevel', 'dB[SPL]{A}'],
  ['dBA', 'soundLevel', 'dB[SPL]{A}'],
  ['°', 'angle', 'deg'],
  ['€', 'money', 'EUR'],
] as const)('%s is read as %s in %s', (symbol, dimension, code) => {
  expect(findUnit(symbol, dimension)?.code).toBe(code);
});

test.each([
  ['dB', 'soundLevel'],
  ['$', 'money'],
  ['"', 'length'],
  ['C', 'temperature'],
  ['MM', 'length'],
] as const)('%s, which is ambiguous or wrong, is not a unit of %s', (symbol, dimension) => {
  expect(findUnit(symbol, dimension)).toBeUndefined();
});

test('a code that the program chose wrongly is a bug, not a value', () => {
  expect(() => requireUnit('mm', 'mass')).toThrow(RangeError);
});
