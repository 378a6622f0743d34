import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { loadFolders } from '../../src/host/load-registry.ts';
import { affectedPaths } from '../../src/registry/dependants.ts';
import type { Kind } from '../../src/registry/kind.ts';

const root = fileURLToPath(new URL('../fixtures', import.meta.url));
const { registry } = loadFolders(['registry'], root);

function affectedBy(path: string | null, ...identities: { kind: Kind; id: string }[]): string[] {
  const affected = affectedPaths(registry, { isChanged: (file) => file === `registry/${path}`, identities });
  return [...affected].map((file) => file.replace('registry/', ''));
}

test('what nothing refers to affects itself only', () => {
  expect(affectedBy('jobs/hook.yaml')).toEqual(['jobs/hook.yaml']);
});

test('a source affects whatever cites it, and what rests on that', () => {
  expect(affectedBy('sources/plumstead-wren-sheet.yaml')).toEqual(
    expect.arrayContaining([
      'machines/plumstead/wren.yaml',
      'trials/2026/wren-daisy-pla-215.yaml',
      'filaments/oakhollow/daisy-pla.yaml',
    ]),
  );
});

test('a trial affects the filament whose limit cites it, not the machine that it was run on', () => {
  const affected = affectedBy('trials/2026/wren-daisy-pla-215.yaml');
  expect(affected).toContain('filaments/oakhollow/daisy-pla.yaml');
  expect(affected).not.toContain('machines/plumstead/wren.yaml');
});

test('a file that is gone affects what refers to its id', () => {
  expect(affectedBy(null, { kind: 'polymer', id: 'PET-G' })).toContain(
    'filaments/oakhollow/clover-petg.yaml',
  );
});

test('nothing changed affects nothing', () => {
  expect(affectedBy(null)).toEqual([]);
});
