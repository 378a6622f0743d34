import { describe, expect, it } from 'vitest';
import { acceptedFindings } from '../../src/evidence/accepted-findings.ts';
import {
  type Acknowledgement,
  acknowledgementsOf,
  isLive,
  lastAcceptableDay,
  neverAccepted,
} from '../../src/evidence/acknowledgement.ts';
import { rules } from '../../src/rules/engine/rules.ts';
import { goodTexts, readText } from '../registry/good-documents.ts';

const rule = 'evidence/far-below-interval';
const entry: Acknowledgement = {
  index: 0,
  rule,
  at: '/meltFlow/1',
  found: '13 mm3/s',
  reason: 'The heater is worn',
  until: '2026-12-31',
};
const day = '2026-06-01';

function documentWith(list: string) {
  const { document } = readText('filament', `${goodTexts.filament}acknowledged:\n${list}`);
  if (document === null) throw new Error('The document cannot be read');
  return document;
}

/** A list of entries about the same rule and value, by their places. */
function acknowledgedAt(...places: readonly string[]) {
  const written = places.map(
    (at, index) =>
      `  - {rule: ${rule}, at: ${at}, found: 13 mm3/s, reason: Reason ${index}, until: '2026-12-31'}\n`,
  );
  return documentWith(written.join(''));
}

/** Which of some places where the same is found are accepted, each with the reason. */
function accepted(document: ReturnType<typeof documentWith>, places: readonly string[], found = '13 mm3/s') {
  const findings = places.map((pointer) => ({ rule, pointer, found }));
  return [...acceptedFindings(document, findings, day)].map(([{ pointer }, { reason }]) => [pointer, reason]);
}

describe('the acknowledgements of a document', () => {
  it('are read with their positions', () => {
    const written = `  - {rule: ${rule}, at: /meltFlow/1, found: 13 mm3/s, reason: The heater is worn, until: '2026-12-31'}\n`;
    expect(acknowledgementsOf(documentWith(written + written))).toEqual([entry, { ...entry, index: 1 }]);
  });

  it('leave out what does not fit the schema', () => {
    const list = [
      'text',
      `{rule: ${rule}, at: /meltFlow/1, found: 13 mm3/s, until: '2026-12-31'}`,
      `{rule: ${rule}, at: /meltFlow/1, reason: Worn, until: '2026-12-31'}`,
      `{rule: ${rule}, at: /meltFlow/1, found: 13, reason: Worn, until: '2026-12-31'}`,
      `{rule: ${rule}, at: 1, found: 13 mm3/s, reason: Worn, until: '2026-12-31'}`,
      `{rule: ${rule}, at: /meltFlow/1, found: 13 mm3/s, reason: ' ', until: '2026-12-31'}`,
      `{rule: ${rule}, at: /meltFlow/1, found: 13 mm3/s, reason: Worn}`,
    ];
    expect(acknowledgementsOf(documentWith(list.map((item) => `  - ${item}\n`).join('')))).toEqual([]);
    expect(acknowledgementsOf(documentWith('  text\n'))).toEqual([]);
  });

  it('are no more than the schema allows', () => {
    const document = acknowledgedAt(...Array.from({ length: 300 }, (_, index) => `/meltFlow/${index}`));
    expect(acknowledgementsOf(document)).toHaveLength(200);
  });
});

describe('an acknowledgement accepts', () => {
  it('what its rule finds at its place and below', () => {
    expect(accepted(acknowledgedAt('/meltFlow/1'), ['/meltFlow/1/value'])).toHaveLength(1);
    expect(accepted(acknowledgedAt('/meltFlow/1/value'), ['/meltFlow/1/value'])).toHaveLength(1);
    expect(accepted(acknowledgedAt('/meltFlow'), ['/meltFlow/1/value'])).toHaveLength(1);
    expect(accepted(acknowledgedAt('/meltFlow/1'), ['/retraction/1/value'])).toEqual([]);
    expect(accepted(acknowledgedAt('/meltFlo'), ['/meltFlow/1/value'])).toEqual([]);
  });

  it('the value that was found, in either spelling, and no other', () => {
    const document = acknowledgedAt('/meltFlow/1');
    expect(accepted(document, ['/meltFlow/1/value'], '13 mm³/s')).toHaveLength(1);
    for (const other of ['13.1 mm3/s', '130 mm3/s', '13 mm3', '-13 mm3/s', '13 mm3/s, 13 mm3/s', ''])
      expect(accepted(document, ['/meltFlow/1/value'], other)).toEqual([]);
  });

  it('a statement that has moved in its list', () => {
    expect(accepted(acknowledgedAt('/meltFlow/1'), ['/meltFlow/4/value'])).toEqual([
      ['/meltFlow/4/value', 'Reason 0'],
    ]);
    expect(accepted(acknowledgedAt('/a/1/b/2'), ['/a/2/b/1/value'])).toHaveLength(1);
  });

  it('of several equal values the one that it names, or none', () => {
    const places = ['/meltFlow/0/value', '/meltFlow/1/value'];
    expect(accepted(acknowledgedAt('/meltFlow/1'), places)).toEqual([['/meltFlow/1/value', 'Reason 0']]);
    expect(accepted(acknowledgedAt('/meltFlow/7'), places)).toEqual([]);
    expect(accepted(acknowledgedAt('/meltFlow'), places)).toEqual([]);
    expect(accepted(acknowledgedAt('/meltFlow/7', '/meltFlow/7'), places)).toEqual([]);
  });

  it('as many equal values as there are entries, wherever these have moved', () => {
    const places = ['/meltFlow/1/value', '/meltFlow/2/value'];
    expect(accepted(acknowledgedAt('/meltFlow/0', '/meltFlow/1'), places)).toEqual([
      ['/meltFlow/1/value', 'Reason 1'],
      ['/meltFlow/2/value', 'Reason 0'],
    ]);
    expect(accepted(acknowledgedAt('/meltFlow/8', '/meltFlow/9'), places)).toHaveLength(2);
  });

  it('by the first of two that say the same', () => {
    expect(accepted(acknowledgedAt('/meltFlow/1', '/meltFlow/1'), ['/meltFlow/1/value'])).toEqual([
      ['/meltFlow/1/value', 'Reason 0'],
    ]);
  });

  it('the same in other white space, and where nothing is found in words nothing', () => {
    const document = acknowledgedAt('/meltFlow/1');
    expect(accepted(document, ['/meltFlow/1/value'], ' 13 \n mm3/s ')).toHaveLength(1);
    const wordless = { rule, pointer: '/meltFlow/1/value', found: null };
    expect(acceptedFindings(document, [wordless], day).size).toBe(0);
  });

  it('the innermost item of lists beyond the ninth, too', () => {
    const places = ['/meltFlow/10/value', '/meltFlow/11/value'];
    expect(accepted(acknowledgedAt('/meltFlow/11'), places)).toEqual([['/meltFlow/11/value', 'Reason 0']]);
    expect(accepted(acknowledgedAt('/meltFlow/12'), places.slice(0, 1))).toEqual([
      ['/meltFlow/10/value', 'Reason 0'],
    ]);
  });

  it('every finding at the one place that it names', () => {
    const places = ['/meltFlow/1/value', '/meltFlow/1/interval'];
    expect(accepted(acknowledgedAt('/meltFlow/1'), places)).toHaveLength(2);
    expect(accepted(acknowledgedAt('/meltFlow/1/value'), places)).toEqual([
      ['/meltFlow/1/value', 'Reason 0'],
    ]);
  });

  it('nothing that another rule finds', () => {
    const document = acknowledgedAt('/meltFlow/1');
    const finding = { rule: 'evidence/other-date', pointer: '/meltFlow/1/value', found: '13 mm3/s' };
    expect(acceptedFindings(document, [finding], day).size).toBe(0);
  });
});

describe('an acknowledgement is live', () => {
  it('up to and including its last day, which is at most twelve months away', () => {
    expect(isLive(entry, '2026-12-31')).toBe(true);
    expect(isLive(entry, '2027-01-01')).toBe(false);
    expect(isLive({ ...entry, until: '2027-06-01' }, day)).toBe(true);
    expect(isLive({ ...entry, until: '2027-06-02' }, day)).toBe(false);
    expect(isLive({ ...entry, until: 'zzzz' }, day)).toBe(false);
    expect(lastAcceptableDay('2028-02-29') >= '2029-02-28').toBe(true);
  });

  it('nowhere at the root', () => {
    expect(isLive({ ...entry, at: '' }, day)).toBe(false);
  });

  it.each([
    ['evidence/readings-changed', 'refuted'],
    ['evidence/unsupported', 'refuted'],
    ['evidence/value-above-interval', 'refuted'],
    ['references/dangling', 'provenance'],
    ['plausibility/drying-temperature', 'safety'],
    ['plausibility/nozzle-temperature', 'safety'],
    ['consistency/hot-end-limit', 'safety'],
  ] as const)('never for %s', (code, why) => {
    expect(rules.map((each) => each.code)).toContain(code);
    expect(neverAccepted(code)).toBe(why);
    expect(isLive({ ...entry, rule: code }, day)).toBe(false);
  });

  it('never for provenance and for errors of safety', () => {
    const classOf = (code: string) => code.split('/')[0];
    const provenance = rules.filter(({ code }) => classOf(code) === 'provenance');
    const dangers = rules.filter(({ code, severity }) => classOf(code) === 'safety' && severity === 'error');
    expect(provenance.length * dangers.length).toBeGreaterThan(0);
    for (const { code } of provenance) expect(neverAccepted(code), code).toBe('provenance');
    for (const { code } of dangers) expect(neverAccepted(code), code).toBe('safety');
  });

  it('for what is unusual, warnings about safety included', () => {
    for (const code of ['safety/unsensed-chamber', 'evidence/stale-firmware', 'plausibility/price'])
      expect(neverAccepted(code)).toBeNull();
  });
});
