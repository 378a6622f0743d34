import { describe, expect, test } from 'vitest';
import { loadFolders } from '../../src/host/load-registry.ts';
import { loadFiles } from '../../src/registry/load-files.ts';
import { folderOf, goodFiles } from './folder-of.ts';
import { goodTexts } from './good-documents.ts';

function load(files: Readonly<Record<string, string>>, folder = '') {
  return loadFiles([{ folder, texts: new Map(Object.entries(files)) }]);
}

const messy = {
  ...goodFiles,
  'sources/b.yaml': goodTexts.source,
  'sources/b-c/d.yaml': 'kind: source\nid: [',
  'sources/a.yml': goodTexts.source.replace('title', 'titel'),
  'sources/.hidden.yaml': goodTexts.source,
  'node_modules/x/profiles/sources/a.yaml': goodTexts.source,
  'machines/1/2/3/4/b.yaml': goodTexts.source,
  'notes.md': '# Notes',
  'policies/large.yaml': `${goodTexts.policy}#${'é'.repeat(600_000)}`,
  'top.yaml': 'kind: heap\n',
};

test('texts make the same registry as files in a folder do', () => {
  const inFolder = loadFolders(['p'], folderOf(Object.fromEntries(inside('p', messy))));
  const inMemory = load(messy, 'p');
  expect(inMemory.findings).toEqual(inFolder.findings);
  expect(new Set(inMemory.findings.map(({ rule }) => rule)).size).toBeGreaterThan(3);
  expect(inMemory.files).toEqual(inFolder.files);
  expect(inMemory.texts).toEqual(inFolder.texts);
  expect(inMemory.registry.profiles.map(({ source }) => source)).toEqual(
    inFolder.registry.profiles.map(({ source }) => source),
  );
});

function inside(folder: string, files: Readonly<Record<string, string>>): [string, string][] {
  return Object.entries(files).map(([path, text]) => [`${folder}/${path}`, text]);
}

test('the order of the texts does not matter', () => {
  const turned = Object.fromEntries(Object.entries(messy).reverse());
  expect(load(turned).files).toEqual(load(messy).files);
  expect(load(turned).findings).toEqual(load(messy).findings);
});

describe('the readings of a trial', () => {
  const trial = goodTexts.trial.replace(/observations:[\s\S]*$/, 'observations: {file: ladder.csv}\n');
  const path = 'trials/2026/lantern-pla-230.yaml';

  test('are the text beside it', () => {
    const { registry, texts } = load({ [path]: trial, 'trials/2026/ladder.csv': 'a\n1\n' }, 'p');
    expect([...registry.trial.values()][0]?.attachment).toMatchObject({ ok: true });
    expect(texts.get('p/trials/2026/ladder.csv')).toBe('a\n1\n');
  });

  test('that nobody has given are missing', () => {
    const { registry } = load({ [path]: trial });
    expect([...registry.trial.values()][0]?.attachment).toMatchObject({
      ok: false,
      problem: 'missing',
      path: 'trials/2026/ladder.csv',
    });
  });
});

test('registries add to each other, and the earlier one counts', () => {
  const base = { folder: 'base', texts: new Map([['sources/a.yaml', goodTexts.source]]) };
  const own = { folder: 'own', texts: new Map([['sources/a.yaml', goodTexts.source]]) };
  const { registry, files } = loadFiles([base, own]);
  expect(files).toEqual(['base/sources/a.yaml', 'own/sources/a.yaml']);
  expect([...registry.source.values()].map(({ source }) => source.path)).toEqual(['base/sources/a.yaml']);
});
