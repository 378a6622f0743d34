import { evidenceHits } from '../../evidence/standing.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'error',
  statement: 'A measured value names every condition of its trial that it depends on.',
  rationale:
    'What a statement leaves out it holds for: a limit without its nozzle counts for every nozzle, and a small one jams.',
  source: 'JCGM 200 (VIM) 2.9 and 2.16: a result holds for the conditions under which it was obtained.',
  example: alike(
    'filament',
    { bad: 'nozzle: hs-0.6', good: 'nozzle: hs-0.6, nozzleTemperature: 245 Cel, batch: 26-0002' },
    (conditions) => `meltFlow:
  - value: 19.6 mm3/s
    interval: 19.5..20.3 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    readings: 2bf0b98f14c9bbd5
    at: {machine: plumstead/wren, ${conditions}}`,
  ),
  check: (profile, context) => evidenceHits('evidence/missing-condition', profile, context),
};
