import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement: 'An acknowledgement names an existing rule.',
  rationale: 'A misspelled code accepts nothing, although it looks as if it did.',
  source: 'Format of the registry: codes of rules never change their meaning.',
  example: {
    kind: 'filament',
    bad: `
acknowledged:
  - {rule: evidence/far-bellow, at: /density, reason: The heater is worn, until: 2027-01-31}`,
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
