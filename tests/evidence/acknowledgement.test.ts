import { describe, expect, it } from 'vitest';
import {
  type Acknowledgement,
  accepts,
  acknowledgementOf,
  acknowledgementsOf,
  canBeAcknowledged,
} from '../../src/evidence/acknowledgement.ts';
import { rules } from '../../src/rules/engine/rules.ts';
import { goodTexts, readText } from '../registry/good-documents.ts';

const entry: Acknowledgement = {
  index: 0,
  rule: 'evidence/far-below-interval-interval',
  at: '/meltFlow/1',
  reason: 'The heater is worn',
  until: '2026-12-31',
};
const finding = { rule: 'evidence/far-below-interval-interval', pointer: '/meltFlow/1/value' };
const day = '2026-06-01';

function documentWith(list: string) {
  const { document } = readText('filament', `${goodTexts.filament}acknowledged:\n${list}`);
  if (document === null) throw new Error('The document cannot be read');
  return document;
}

describe('the acknowledgements of a document', () => {
  it('are read with their positions', () => {
    const written =
      '  - {rule: evidence/far-below-interval-interval, at: /meltFlow/1, reason: The heater is worn, until: 2026-12-31}\n';
    expect(acknowledgementsOf(documentWith(written + written))).toEqual([entry, { ...entry, index: 1 }]);
  });

  it('leave out what does not fit the schema', () => {
    const list = [
      'text',
      '{rule: evidence/far-below-interval-interval, at: /meltFlow/1, until: 2026-12-31}',
      '{rule: evidence/far-below-interval-interval, at: 1, reason: Worn, until: 2026-12-31}',
      '{rule: evidence/far-below-interval-interval, at: /meltFlow/1, reason: Worn}',
    ];
    expect(acknowledgementsOf(documentWith(list.map((item) => `  - ${item}\n`).join('')))).toEqual([]);
    expect(acknowledgementsOf(documentWith('  text\n'))).toEqual([]);
  });
});

describe('an acknowledgement accepts', () => {
  it('what its rule finds at its place and below, up to and including its last day', () => {
    expect(accepts(entry, finding, day)).toBe(true);
    expect(accepts({ ...entry, at: '' }, finding, day)).toBe(true);
    expect(accepts({ ...entry, at: '/meltFlow/1/value' }, finding, '2026-12-31')).toBe(true);
  });

  it('nothing later, of another rule or elsewhere', () => {
    expect(accepts(entry, finding, '2027-01-01')).toBe(false);
    expect(accepts(entry, { ...finding, rule: 'evidence/other-date' }, day)).toBe(false);
    expect(accepts(entry, { ...finding, pointer: '/meltFlow/10/value' }, day)).toBe(false);
  });

  it.each(['evidence/unsupported', 'evidence/value-above-interval'])('nothing that %s finds', (rule) => {
    expect(rules.map(({ code }) => code)).toContain(rule);
    expect(canBeAcknowledged(rule)).toBe(false);
    expect(accepts({ ...entry, rule }, { ...finding, rule }, day)).toBe(false);
  });
});

it('the first acknowledgement that accepts a finding is the one that counts', () => {
  const document = documentWith(
    [
      '{rule: evidence/far-below-interval-interval, at: /meltFlow/0, reason: Elsewhere, until: 2026-12-31}',
      '{rule: evidence/far-below-interval-interval, at: /meltFlow, reason: Past, until: 2026-01-31}',
      '{rule: evidence/far-below-interval-interval, at: /meltFlow, reason: First, until: 2026-12-31}',
      '{rule: evidence/far-below-interval-interval, at: /meltFlow/1, reason: Second, until: 2027-12-31}',
    ]
      .map((item) => `  - ${item}\n`)
      .join(''),
  );
  expect(acknowledgementOf(document, finding, day)).toMatchObject({ index: 2, reason: 'First' });
  expect(acknowledgementOf(document, finding, '2028-01-01')).toBeNull();
});
