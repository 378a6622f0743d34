import { evidenceHits } from '../../evidence/standing.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'error',
  statement:
    'A measured limit is on the safe side of the result of its trial, and its interval is that of the trial.',
  rationale:
    'Tables are made from this number: beyond what was measured the hot end starves or jams, or the part fails.',
  source:
    'JCGM 101:2008, clause 7: estimate and coverage interval, recomputed from the readings of the trial.',
  example: alike(
    'filament',
    { bad: '24 mm3/s', good: '19.6 mm3/s' },
    (value) => `meltFlow:
  - value: ${value}
    interval: 19.5..20.3 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    readings: 2bf0b98f14c9bbd5
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel, batch: 26-0002}`,
  ),
  check: (profile, context) => evidenceHits('evidence/unsupported', profile, context),
};
