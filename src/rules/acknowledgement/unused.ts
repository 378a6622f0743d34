import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement: 'An acknowledgement accepts a finding that there is.',
  rationale: 'What accepts nothing today may hide a fault tomorrow; the list of debts shall only shrink.',
  source: 'Common practice, no source.',
  example: {
    kind: 'filament',
    bad: `
acknowledged:
  - {rule: evidence/far-below-interval, at: /density, reason: The heater is worn, until: 2027-01-31}`,
    good: `
meltFlow:
  - value: 8 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}
    date: 2026-02-12
acknowledged:
  - {rule: evidence/far-below-interval, at: /meltFlow/0, reason: The heater is worn, until: 2027-01-31}`,
  },
};
