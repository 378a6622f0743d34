import { expect, it } from 'vitest';
import { printedUnit } from '../../src/units/print-symbols.ts';

it.each([
  ['mm3/s', 'mm³/s'],
  ['g/cm3', 'g/cm³'],
  ['J/g/K', 'J/(g·K)'],
  ['Cel', '°C'],
  ['dB[SPL]{A}', 'dB(A)'],
  ['um', 'µm'],
  ['um2', 'µm²'],
  ['deg', '°'],
  ['[degF]', '°F'],
  ['[in_i]/s2', 'in/s²'],
  ['[lb_av]/[cin_i]', 'lb/in³'],
  ['[lb_av]/[cft_i]', 'lb/ft³'],
  ['[sin_i]', 'in²'],
  ['[g]', 'gₙ'],
  ['[ppth]', '‰'],
  ['[psi]', 'psi'],
  ['dB[SPL]', 'dB(SPL)'],
  ['cal_th/cm/s/K', 'cal_th/(cm·s·K)'],
  ['mm/s', 'mm/s'],
  ['{count}', ''],
  ['%', '%'],
  ['1', ''],
])('%s is printed as "%s"', (code, printed) => {
  expect(printedUnit(code)).toBe(printed);
});
