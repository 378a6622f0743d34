/** @module-tag long */
import { expect, test } from 'vitest';
import { projectFolder } from '../scripts/docs/documents.ts';
import { namesSlip } from '../scripts/slips/names-slip.ts';
import { openRegistry } from '../scripts/slips/planted-registry.ts';
import { plantedSlips, sampledSlips } from '../scripts/slips/planted-slips.ts';
import { readTexts } from '../scripts/slips/read-texts.ts';
import { aimOf, slipKindNames } from '../scripts/slips/slip-kinds.ts';
import { tallies } from '../scripts/slips/tally.ts';
import { variedRegistry } from '../scripts/slips/varied-registry.ts';
import { wilsonInterval } from '../scripts/wilson-interval.ts';

const today = '2026-11-25';
const texts = readTexts(`${projectFolder}/profiles`);
const demo = openRegistry('demo', texts, today);
const all = plantedSlips(demo.registry, 'test');

test('the demo registry is clean', () => {
  expect(demo.findings).toEqual([]);
});

test('slips of every kind are planted', () => {
  const planted = new Set(all.map(({ kind }) => kind));
  expect([...planted].sort()).toEqual([...slipKindNames].sort());
});

const kinds = slipKindNames.filter((kind) => aimOf(kind) === 1);
const slips = sampledSlips(all, { limit: 1, seed: 'test', kinds });

test.each(slips.map((slip) => [`${slip.kind}: ${slip.file} ${slip.pointer}: ${slip.after}`, slip] as const))(
  'catches %s',
  (_, slip) => {
    expect(demo.plant(slip).rank).not.toBeNull();
  },
);

test('readings that are altered before anything is adopted leave no digest that would betray them', () => {
  const before = sampledSlips(all, { limit: 6, seed: 'stages', kinds: ['reading +-10 %, flow ladder'] });
  expect(new Set(before.map(({ adoption }) => adoption?.stage))).toEqual(
    new Set(['nothingAdopted', 'adoptedFromThem']),
  );
  const brought = before.flatMap((slip) => demo.plant(slip).brought.map(({ rule }) => rule));
  expect(brought).not.toContain('evidence/readings-changed');
});

test('a finding elsewhere counts by its words alone, and by whole ones', () => {
  const [slip] = sampledSlips(all, { limit: 1, seed: 'words', kinds: ['x10'] });
  const finding = {
    severity: 'error' as const,
    ...{ rule: 'a/b', file: 'other.yaml', line: 1, column: 1, endLine: 1, endColumn: 1 },
    ...{ pointer: '/id', found: null, allowed: null, source: null, help: null },
  };
  if (slip === undefined) throw new Error('no slip');
  const told = { ...slip, words: ['3 mm', 'layer height'] };
  expect(namesSlip({ ...finding, message: 'A layer height of 2 cm' }, told)).toBe(true);
  expect(namesSlip({ ...finding, message: 'A bore of 3 mm' }, told)).toBe(true);
  expect(namesSlip({ ...finding, message: 'A bore of 13 mm' }, told)).toBe(false);
});

test('what the form refuses is counted apart', () => {
  const [transposed] = sampledSlips(all, { limit: 1, seed: 'form', kinds: ['x10'] });
  if (transposed === undefined) throw new Error('no slip');
  const outcome = { slip: transposed, brought: [], severity: null } as const;
  const { all: both } = tallies([
    { ...outcome, byForm: true, rank: 1 },
    { ...outcome, byForm: false, rank: null },
  ]);
  expect(both).toMatchObject({ planted: 2, refusedByForm: 1, judged: 1, caught: 0 });
});

test('the interval of a share', () => {
  // Newcombe, Statistics in Medicine 17 (1998) 857-872, Table I, method 3: 81 of 263, 0 of 20, 1 of 29.
  const rounded = (seen: number, of: number) => wilsonInterval(seen, of).map((end) => end.toFixed(4));
  expect(rounded(81, 263)).toEqual(['0.2553', '0.3662']);
  expect(rounded(0, 20)).toEqual(['0.0000', '0.1611']);
  expect(rounded(1, 29)).toEqual(['0.0061', '0.1718']);
});

test('a varied registry is in order, and another one for each seed', { tags: 'long' }, () => {
  const [one, other] = ['one', 'other'].map((seed) => variedRegistry(texts, seed, today));
  expect(openRegistry('varied', one ?? texts, today).findings).toEqual([]);
  expect([...(one ?? [])].filter(([path, text]) => texts.get(path) !== text).length).toBeGreaterThan(30);
  expect(one).not.toEqual(other);
});
