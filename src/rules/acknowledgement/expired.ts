import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'warning',
  statement: 'An acknowledgement is valid up to and including its date.',
  rationale:
    'A value that was accepted for a time has to be measured again; after that day the finding is back.',
  source: 'Format of the registry: `until` is the last day of an acknowledgement.',
  example: {
    kind: 'filament',
    bad: `
acknowledged:
  - {rule: evidence/far-below-interval, at: /density, reason: The heater is worn, until: 2026-01-31}`,
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
