import { notAdoptedHits } from '../../evidence/not-adopted.ts';
import { statementsOf } from '../../registry/statement.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'warning',
  statement: 'A measured limit has the interval that its trial gives, and the digest of its readings.',
  rationale: 'Without them nobody sees how sure the limit is, nor that its readings were altered later.',
  source: 'JCGM 101:2008, clause 7: the coverage interval belongs to the estimate.',
  example: alike(
    'filament',
    {
      bad: 'basis: measured',
      good: 'interval: 19.5..20.3 mm3/s\n    basis: measured\n    readings: 2bf0b98f14c9bbd5',
    },
    (keys) => `meltFlow:
  - value: 19.7 mm3/s
    ${keys}
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel, batch: 26-0002}`,
  ),
  *check(profile, context) {
    for (const placed of statementsOf(profile)) yield* notAdoptedHits(profile, placed, context);
  },
};
