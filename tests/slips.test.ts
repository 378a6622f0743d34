import { expect, test } from 'vitest';
import { projectFolder } from '../scripts/docs/documents.ts';
import { plantedSlips, sampledSlips } from '../scripts/slips/planted-slips.ts';
import { aimOf } from '../scripts/slips/report.ts';
import { slipKinds } from '../scripts/slips/slip.ts';
import { openRegistry } from '../scripts/slips/slipped-registry.ts';

const kinds = slipKinds.filter((kind) => aimOf(kind) === 1);
const demo = openRegistry({ folder: `${projectFolder}/profiles`, shown: 'profiles' }, '2026-11-25');
const slips = sampledSlips(plantedSlips(demo.registry, 'test'), { limit: 3, seed: 'test', kinds });

test('the demo registry is clean', () => {
  expect(demo.findings).toEqual([]);
});

test('slips of every kind are planted', () => {
  expect(new Set(slips.map(({ kind }) => kind))).toEqual(new Set(kinds));
});

test.each(
  slips.map(
    (slip) => [`${slip.kind}: ${slip.profile.source.path} ${slip.pointer}: ${slip.after}`, slip] as const,
  ),
)('catches %s', (_, slip) => {
  expect(demo.plant(slip).byCheck).toBe(true);
});
