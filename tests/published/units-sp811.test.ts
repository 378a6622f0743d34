// Source of every printed figure here: A. Thompson, B. N. Taylor, Guide for the Use of the International System of
// Units (SI), NIST Special Publication 811, 2008 edition, Appendix B.8 (alphabetical list) and B.9 (by kind).
// The list rounds to seven figures; those it prints in bold are exact. `exact` follows from 1 in = 25.4 mm,
// 1 lb = 453.592 37 g and g_n = 9.806 65 m/s2 (B.8 and its notes).
import { describe, expect, test } from 'vitest';
import { fromCanonical, toCanonical } from '../../src/units/convert-unit.ts';
import type { Dimension } from '../../src/units/dimension.ts';
import { requireUnit } from '../../src/units/unit-table.ts';

function convert(value: number, dimension: Dimension, from: string, to: string): number {
  return fromCanonical(toCanonical(value, requireUnit(from, dimension)), requireUnit(to, dimension));
}

const figures: [string, Dimension, from: string, to: string, printed: number, exact: number][] = [
  ['inch', 'length', '[in_i]', 'm', 2.54e-2, 0.0254],
  ['mil', 'length', '[mil_i]', 'm', 2.54e-5, 2.54e-5],
  ['foot', 'length', '[ft_i]', 'm', 3.048e-1, 0.3048],
  ['cubic inch', 'volume', '[cin_i]', 'm3', 1.638706e-5, 1.6387064e-5],
  ['pound (avoirdupois)', 'mass', '[lb_av]', 'kg', 4.535924e-1, 0.45359237],
  ['ounce (avoirdupois)', 'mass', '[oz_av]', 'kg', 2.834952e-2, 0.028349523125],
  ['pound-force', 'force', '[lbf_av]', 'N', 4.448222, 4.4482216152605],
  ['kilogram-force', 'force', 'kgf', 'N', 9.80665, 9.80665],
  ['pound-force per square inch', 'pressure', '[psi]', 'Pa', 6.894757e3, 6894.757293168361],
  ['bar', 'pressure', 'bar', 'Pa', 1.0e5, 1e5],
  // The list gives the two calories themselves, 4.184 J and 4.1868 J; the rows per gram and per gram kelvin, and the
  // one of conductivity, are from memory and follow from them.
  ['thermochemical calorie per gram', 'specificEnergy', 'cal_th/g', 'J/g', 4.184, 4.184],
  ['International Table calorie per gram', 'specificEnergy', 'cal_IT/g', 'J/g', 4.1868, 4.1868],
  ['calorie_th per gram kelvin', 'specificHeat', 'cal_th/g/K', 'J/kg/K', 4.184e3, 4184],
  ['calorie_IT per gram kelvin', 'specificHeat', 'cal_IT/g/K', 'J/kg/K', 4.1868e3, 4186.8],
  ['calorie_th per cm s kelvin', 'thermalConductivity', 'cal_th/cm/s/K', 'W/m/K', 4.184e2, 418.4],
  ['pound per cubic inch', 'density', '[lb_av]/[cin_i]', 'g/cm3', 2.76799e1, 27.67990471020312],
  ['pound per cubic foot', 'density', '[lb_av]/[cft_i]', 'kg/m3', 1.601846e1, 16.018463373960138],
  ['gram per cubic centimetre', 'density', 'g/cm3', 'kg/m3', 1.0e3, 1000],
  ['minute', 'time', 'min', 's', 6.0e1, 60],
  ['hour', 'time', 'h', 's', 3.6e3, 3600],
  ['day', 'time', 'd', 's', 8.64e4, 86400],
  ['degree (angle)', 'angle', 'deg', 'rad', 1.745329e-2, Math.PI / 180],
  // B.8, acceleration of free fall, standard (from memory for the row, exact by definition).
  ['standard gravity', 'acceleration', '[g]', 'm/s2', 9.80665, 9.80665],
];

describe.each(figures)('%s', (_name, dimension, from, to, printed, exact) => {
  test(`1 ${from} in ${to} rounds to the printed ${printed}`, () => {
    expect(Number(convert(1, dimension, from, to).toPrecision(7))).toBe(printed);
  });

  test('and is the exact factor', () => {
    expect(Math.abs(convert(1, dimension, from, to) / exact - 1)).toBeLessThan(4e-16);
  });
});

// B.9, temperature: t/°C = T/K - 273.15, t/°C = (t/°F - 32)/1.8, T/K = (t/°F + 459.67)/1.8, all exact.
test.each([
  [273.15, 'K', 'Cel', 0],
  [0, 'Cel', 'K', 273.15],
  [32, '[degF]', 'Cel', 0],
  [212, '[degF]', 'Cel', 100],
  [446, '[degF]', 'Cel', 230],
  [-459.67, '[degF]', 'K', 0],
])('%d %s in %s is %d', (value, from, to, expected) => {
  expect(convert(value, 'temperature', from, to)).toBe(expected);
});

// B.9, temperature interval: 1 °F is 5.555 556 E-01 K (5/9 exactly), without an offset: 9 °F are 5 K.
test('a difference of 9 degF is one of 5 K', () => {
  expect(convert(9, 'temperatureDifference', '[degF]', 'K')).toBe(5);
});

// B.8: one minute is 60 s, so 1 cm3/h is 1/3.6 mm3/s.
test('3.6 cm3/h are 1 mm3/s', () => {
  expect(convert(3.6, 'volumeFlow', 'cm3/h', 'mm3/s')).toBe(1);
});
