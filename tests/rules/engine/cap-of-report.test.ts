/** @module-tag long */
import { expect, it } from 'vitest';
import type { Finding } from '../../../src/registry/finding.ts';
import { capAcknowledged, capFindings } from '../../../src/rules/engine/cap-findings.ts';

function finding(file: string, line: number): Finding {
  const place = { file, line, column: 1, endLine: line, endColumn: 2, pointer: '' };
  return {
    rule: 'shape/unknown-key',
    severity: 'error',
    message: 'm',
    found: null,
    allowed: null,
    source: null,
    help: null,
    ...place,
  };
}

function files(count: number, each: number): Finding[] {
  return Array.from({ length: count * each }, (_, index) =>
    finding(`profiles/${Math.floor(index / each)}.yaml`, (index % each) + 1),
  );
}

it.each([
  [2100, 300],
  [500, 300],
  [20_000, 3],
])(
  'the report on %i files with %i findings each is capped, names every file, and counts the rest',
  (count, each) => {
    const shown = capFindings(files(count, each));
    const more = shown.filter(({ rule }) => rule === 'file/many-findings');
    const left = more.reduce((sum, { message }) => sum + Number.parseInt(message, 10), 0);
    expect(shown.length - more.length).toBeLessThanOrEqual(Math.max(10_000, count));
    expect(shown.length - more.length + left).toBe(count * each);
    expect(new Set(shown.map(({ file }) => file)).size).toBe(count);
  },
);

it('50 files may show all that one may show', () => {
  expect(capFindings(files(50, 200))).toHaveLength(10_000);
});

it('what is acknowledged is capped alike where a report lists it', () => {
  const accepted = files(2, 300).map((each) => ({ ...each, reason: 'seen', until: '2027-01-01' }));
  const shown = capAcknowledged(accepted);
  expect(shown).toHaveLength(402);
  expect(shown.filter(({ rule }) => rule === 'file/many-findings').map(({ message }) => message)).toEqual([
    '100 more findings in this file are not shown; they are acknowledged too',
    '100 more findings in this file are not shown; they are acknowledged too',
  ]);
});
