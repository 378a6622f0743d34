import type { FormRule } from '../engine/rule.ts';

export const rule: FormRule = {
  judges: 'form',
  severity: 'error',
  statement: 'Where a range belongs, both of its ends are written, joined by two points.',
  rationale: 'A hyphen between numbers is also a minus sign, and a single value is no window.',
  source: 'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json',
  example: {
    kind: 'filament',
    bad: `
nozzleTemperature:
  - {value: 230-255 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    good: `
nozzleTemperature:
  - {value: 230..255 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
  },
};
