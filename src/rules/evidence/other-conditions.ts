import { evidenceHits } from '../../evidence/standing.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'error',
  statement:
    'A measured value holds under the conditions of its trial: machine, nozzle, filament, nozzle temperature.',
  rationale: 'A limit found with one nozzle or at one temperature says little about another.',
  source: 'JCGM 200 (VIM) 2.9 and 2.16: a result holds for the conditions under which it was obtained.',
  example: alike(
    'filament',
    { bad: 'hs-0.4', good: 'hs-0.6' },
    (value) => `meltFlow:
  - value: 19.6 mm3/s
    interval: 19.5..20.3 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    readings: 2bf0b98f14c9bbd5
    at: {machine: plumstead/wren, nozzle: ${value}, nozzleTemperature: 245 Cel, batch: 26-0002}`,
  ),
  check: (profile, context) => evidenceHits('evidence/other-conditions', profile, context),
};
