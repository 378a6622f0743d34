import { meantTrial } from '../../evidence/meant-trial.ts';
import { statementsOf } from '../../registry/statement.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'registry',
  severity: 'error',
  statement: 'A measured value names the trial whose readings it was adopted from.',
  rationale:
    'A statement that was copied, or whose trial was exchanged, shows readings that say nothing of it; its own still stand in the registry.',
  source:
    'FIPS 180-4: a SHA-256 digest of the readings in canonical units, which stands beside each adopted limit.',
  example: alike(
    'filament',
    { bad: '6cc971210344c1a6', good: '2bf0b98f14c9bbd5' },
    (digest) => `meltFlow:
  - value: 19.6 mm3/s
    interval: 19.5..20.3 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    readings: ${digest}
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel, batch: 26-0002}`,
  ),
  *check(profile, { registry }) {
    for (const { path, statement } of statementsOf(profile)) {
      const { basis, evidence } = statement;
      const meant = basis === 'measured' ? meantTrial(statement, registry) : null;
      if (meant === null || evidence === undefined) continue;
      yield {
        path: [...path, 'evidence'],
        part: 'value',
        message: `The value was adopted from the readings of the trial "${meant.id}" of ${meant.data.date}, not of "${evidence}": so says the digest beside it`,
        found: evidence,
        allowed: meant.id,
        help: `Write \`evidence: ${meant.id}\`. If the value really is that of "${evidence}", adopt it from there: \`meltbounds reduce ${evidence}\` shows what its readings give.`,
      };
    }
  },
};
