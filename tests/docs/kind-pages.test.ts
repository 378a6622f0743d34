import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { kindPages } from '../../scripts/generate/kind-pages.ts';

const folder = new URL('../../docs/kinds/', import.meta.url);
const pages = kindPages();

test('docs/kinds holds the page of every kind, as its schema tells it, and no other', () => {
  const present = readdirSync(folder).map(
    (name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const,
  );
  expect(new Map(present)).toEqual(new Map([...pages].sort(([a], [b]) => (a < b ? -1 : 1))));
});

test('a page tells mandatory keys, allowed values and nested entries', () => {
  const machine = pages.get('machine.md');
  expect(machine).toContain('| `layout` | yes | `movingBed`, `gantry`, `parallelArm`, `belt` |');
  expect(machine).toMatch(/\| `hotEnds\[\]\.nozzles\[\]\.material` \| yes \| `brass`,/);
});

test('every link of a page leads to a page and a heading', () => {
  for (const text of pages.values()) {
    for (const [, file = '', heading] of text.matchAll(/\]\(([a-z]+\.md)(?:#([a-z]+))?\)/g)) {
      const target = pages.get(file);
      expect(target).toBeDefined();
      if (heading !== undefined) expect(target?.toLowerCase()).toContain(`\n## ${heading}\n`);
    }
  }
});
