import { expect, test } from 'vitest';
import { suggestUnit } from '../../src/units/suggest-unit.ts';
import { units } from '../../src/units/unit-table.ts';

test.each([
  ['mm^3/s', 'volumeFlow', 'mm3/s'],
  ['mm3/sec', 'volumeFlow', 'mm3/s'],
  ['mm**3/s', 'volumeFlow', 'mm3/s'],
  ['mm3 / s', 'volumeFlow', 'mm3/s'],
  ['MM3/S', 'volumeFlow', 'mm3/s'],
  ['cc/min', 'volumeFlow', 'cm3/min'],
  ['degC', 'temperature', 'Cel'],
  ['C', 'temperature', 'Cel'],
  ['ºC', 'temperature', 'Cel'],
  ['celsius', 'temperature', 'Cel'],
  ['degrees celsius', 'temperature', 'Cel'],
  ['F', 'temperature', '[degF]'],
  ['kelvin', 'temperature', 'K'],
  ['mm/sec', 'speed', 'mm/s'],
  ['mm/sec2', 'acceleration', 'mm/s2'],
  ['mm/s^2', 'acceleration', 'mm/s2'],
  ['grams', 'mass', 'g'],
  ['lbs', 'mass', '[lb_av]'],
  ['inch', 'length', '[in_i]'],
  ['g/cc', 'density', 'g/cm3'],
  ['W/mK', 'thermalConductivity', 'W/m/K'],
  ['percent', 'ratio', '%'],
  ['hours', 'time', 'h'],
  ['Watt', 'power', 'W'],
  ['mpa', 'pressure', 'MPa'],
  ['db', 'soundLevel', 'dB[SPL]{A}'],
  ['eur', 'money', 'EUR'],
  ['μm', 'length', 'um'],
  ['mm per second', 'speed', 'mm/s'],
  ['mm³ per sec', 'volumeFlow', 'mm3/s'],
  ['mm/second2', 'acceleration', 'mm/s2'],
  ['mm/sek', 'speed', 'mm/s'],
] as const)('%s as a %s probably means %s', (written, dimension, code) => {
  expect(suggestUnit(written, dimension)).toMatchObject({ code, dimension });
});

test('a third of the letters may be wrong', () => {
  expect(suggestUnit('kgg', 'mass')).toMatchObject({ code: 'kg' });
  expect(suggestUnit('kq', 'mass')).toBeUndefined();
  expect(suggestUnit('mm3/sxx', 'volumeFlow')).toMatchObject({ code: 'mm3/s' });
  expect(suggestUnit('mm3/sxxx', 'volumeFlow')).toBeUndefined();
});

test('of several that come near the nearest is meant', () => {
  expect(suggestUnit('cm/mim', 'speed')).toMatchObject({ code: 'cm/min' });
});

test('of two that come equally near the first one listed is meant', () => {
  expect(suggestUnit('xm/s', 'speed')).toMatchObject({ code: 'mm/s' });
});

test('a text of 24 characters is the longest that is looked up', () => {
  expect(suggestUnit('mm                     /s', 'speed')).toBeUndefined();
  expect(suggestUnit('mm                    /s', 'speed')).toMatchObject({ code: 'mm/s' });
});

test('a unit of another dimension is offered only when the asked one has none near', () => {
  expect(suggestUnit('celsius', 'volumeFlow')).toMatchObject({ code: 'Cel', dimension: 'temperature' });
});

test.each(['parsnips', '', 'x'.repeat(25), '!!'])('nothing comes near %j', (written) => {
  expect(suggestUnit(written, 'volumeFlow')).toBeUndefined();
});

test('every unit in lower or upper case is recognised, though case may leave two candidates', () => {
  const lost = units.filter(({ code, dimension }) =>
    [code.toLowerCase(), code.toUpperCase()].some(
      (written) => suggestUnit(written, dimension)?.dimension !== dimension,
    ),
  );
  expect(lost).toEqual([]);
});
