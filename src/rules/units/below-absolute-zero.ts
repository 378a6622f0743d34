import { alike } from '../engine/examples.ts';
import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'No temperature is below absolute zero.',
  rationale: 'Nothing is colder; a sign or a unit is wrong.',
  source: 'BIPM, The International System of Units, 9th edition, 2.3.1: t/°C = T/K − 273.15.',
  formula: 't ≥ −273.15 °C',
  example: alike(
    'trial',
    { bad: '-300 Cel', good: '21 Cel' },
    (value) => `
conditions:
  nozzleTemperature: 245 Cel
  ambientTemperature: ${value}`,
  ),
};
