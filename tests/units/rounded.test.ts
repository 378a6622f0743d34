import { expect, test } from 'vitest';
import { amountOf, rounded } from '../../src/units/rounded.ts';

test.each([
  [43.123456789, undefined, 43.1235],
  [0.000123456789, undefined, 0.000123457],
  [43.123456789, 3, 43.1],
  [-1234567, undefined, -1234570],
])('%d to %s digits is %d', (value, digits, short) => expect(rounded(value, digits)).toBe(short));

test('an amount holds a rounded value and its unit', () => {
  expect(amountOf(43.123456789, 'mm3/s')).toEqual({ value: 43.1235, unit: 'mm3/s' });
});
