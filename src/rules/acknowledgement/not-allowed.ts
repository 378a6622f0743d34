import type { AcknowledgementRule } from '../engine/rule.ts';

export const rule: AcknowledgementRule = {
  judges: 'acknowledgement',
  severity: 'error',
  statement: 'A limit that its own readings or its own interval refute cannot be acknowledged.',
  rationale: 'Tables are made from the limit, and no reason makes a value true that the bench has refuted.',
  source: 'JCGM 101:2008, clause 7: estimate and coverage interval follow from the readings.',
  example: {
    kind: 'filament',
    bad: `
acknowledged:
  - {rule: evidence/unsupported, at: /meltFlow/0, reason: The heater is worn, until: 2027-01-31}`,
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
