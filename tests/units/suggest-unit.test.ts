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
] as const)('%s as a %s probably means %s', (written, dimension, code) => {
  expect(suggestUnit(written, dimension)).toMatchObject({ code, dimension });
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
