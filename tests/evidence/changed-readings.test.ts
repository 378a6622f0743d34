import { describe, expect, it } from 'vitest';
import { changedReadings } from '../../src/evidence/changed-readings.ts';
import { changedReadingsHit } from '../../src/evidence/changed-trial.ts';
import { daisy, type Edit, wren } from '../rules/edited-sample.ts';
import { registryAfter } from './edited-registry.ts';

const sheet = 'trials/2026/wren-daisy-pla-230.csv';
const altered: Edit = { in: sheet, from: '26,400,1.171', to: '26,400,1.181' };
const digest = '6cc971210344c1a6';

/** What is said at the ladder of Daisy PLA at 230 °C. */
const hitAfter = (...edits: readonly Edit[]) => {
  const registry = registryAfter(edits);
  return changedReadingsHit(registry.trial.get('wren-daisy-pla-230')!, registry);
};

/** The digest of the altered readings, which a reader gets by asking for it. */
const now = (() => {
  const registry = registryAfter([altered]);
  return changedReadings({ readings: digest }, registry.trial.get('wren-daisy-pla-230')!);
})();

describe('readings that a limit was adopted from', () => {
  it('are known by their digest', () => {
    const registry = registryAfter([]);
    const trial = registry.trial.get('wren-daisy-pla-230')!;
    expect(changedReadings({ readings: digest }, trial)).toBeNull();
    expect(changedReadings({ readings: '0123456789abcdef' }, trial)).toBe(digest);
    expect(changedReadings({}, trial)).toBeNull();
    expect(now).toMatch(/^[0-9a-f]{16}$/);
  });

  it('are told at their trial once they have changed', () => {
    expect(hitAfter()).toBeNull();
    expect(hitAfter(altered)).toEqual({
      path: ['observations'],
      part: 'key',
      blames: expect.arrayContaining([{ path: ['observations'] }, { path: ['scale'] }]),
      message: 'The readings are not those that meltFlow of filament oakhollow/daisy-pla was adopted from',
      found: `digest ${now}`,
      allowed: `digest ${digest}`,
      help: 'Compare the readings with the bench sheet and put back what differs. Only where the sheet has what stands here, look at what they give now: `meltbounds reduce wren-daisy-pla-230`',
    });
  });

  it('are told once for all limits that rest on them, with their number', () => {
    const another = (evidence: string, more = `, readings: ${digest}`): Edit => ({
      in: wren,
      from: '    meltFlow:\n',
      to: `    meltFlow:\n      - {value: 20 mm3/s, basis: measured, evidence: ${evidence}${more}}\n`,
    });
    const message = (...edits: readonly Edit[]) => hitAfter(altered, ...edits)?.message;
    expect(message(another('wren-daisy-pla-230'))).toMatch(/, and 1 more, was adopted from$/);
    expect(message(another('wren-daisy-pla-230', ''))).not.toMatch(/more/);
    expect(message(another('wren-daisy-pla-215'))).not.toMatch(/more/);
    expect(message(another('wren-daisy-pla-230', `, readings: ${now}`))).not.toMatch(/more/);
  });

  it('are of no concern where nothing was adopted from them', () => {
    const dropped = { in: daisy, from: `    readings: ${digest}\n`, to: '' };
    expect(hitAfter(altered, dropped)).toBeNull();
  });

  it('are not told where they cannot be read, which is found by itself', () => {
    expect(hitAfter({ in: sheet, from: 'commandedFlow [mm3/s]', to: 'commandedFlow [furlong]' })).toBeNull();
  });
});
