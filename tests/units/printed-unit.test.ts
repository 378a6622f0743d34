import { expect, it } from 'vitest';
import { printedUnit } from '../../src/units/print-symbols.ts';

it.each([
  ['mm3/s', 'mm³/s'],
  ['g/cm3', 'g/cm³'],
  ['J/g/K', 'J/(g·K)'],
  ['Cel', '°C'],
  ['dB[SPL]{A}', 'dB(A)'],
  ['um', 'µm'],
  ['%', '%'],
  ['1', ''],
])('%s is printed as "%s"', (code, printed) => {
  expect(printedUnit(code)).toBe(printed);
});
