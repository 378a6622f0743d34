import { changedReadingsHit } from '../../evidence/changed-trial.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'error',
  statement: 'The readings of a trial are those that its limits were adopted from.',
  rationale:
    'A reading that is altered after the limit was adopted hides in a ladder of good ones; records are never changed.',
  source:
    'FIPS 180-4: a SHA-256 digest of the readings in canonical units, which stands beside each adopted limit.',
  example: alike(
    'filament',
    { bad: '0a1b2c3d4e5f6a7b', good: '2bf0b98f14c9bbd5' },
    (digest) => `meltFlow:
  - value: 19.6 mm3/s
    interval: 19.5..20.3 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    readings: ${digest}
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel, batch: 26-0002}`,
  ),
  *check(profile, { registry }) {
    const hit = changedReadingsHit(profile, registry);
    if (hit !== null) yield hit;
  },
};
