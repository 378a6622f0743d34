import { execFileSync } from 'node:child_process';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { loadFolders } from '../../src/host/load-registry.ts';
import { readRegistryFile, readRegistryFiles } from '../../src/host/registry-files.ts';
import { folderOf, goodPaths } from '../registry/folder-of.ts';
import { changed, essence, goodTexts } from '../registry/good-documents.ts';

const source = goodTexts.source;

/** Every file of a folder: its path, and why it was refused or null. */
function read(folder: string): [string, string | null][] {
  return readRegistryFiles({ folder, shown: '' }).map((file) =>
    file.ok ? [file.source.path, null] : [file.path, file.problem],
  );
}

function findings(folder: string): string[] {
  return loadFolders([folder], folder).findings.map((finding) => `${finding.file} ${essence(finding)}`);
}

test('all YAML files are read, in an order of code units, whatever else is there', () => {
  const folder = folderOf({
    'sources/b.yml': source,
    'sources/B.yaml': source,
    'sources/a.yaml': source,
    'sources/notes.md': '',
    'sources/a.yaml.bak': source,
    'sources/.hidden.yaml': source,
    '.git/a.yaml': source,
    'node_modules/a.yaml': source,
    'top.yaml': source,
  });
  expect(read(folder).map(([path]) => path)).toEqual([
    'sources/B.yaml',
    'sources/a.yaml',
    'sources/b.yml',
    'top.yaml',
  ]);
});

test('a registry that is no folder is no empty registry', () => {
  const folder = folderOf({ 'a.yaml': source });
  expect(readRegistryFiles({ folder: join(folder, 'a.yaml'), shown: 'a.yaml' })).toEqual([
    { ok: false, path: 'a.yaml', relativePath: '', problem: 'unreadable' },
  ]);
});

describe('a symbolic link is refused', () => {
  const outside = () => folderOf({ 'secret.yaml': source, 'sources/secret.yaml': source });

  test('that stands for a file inside of the registry', () => {
    const folder = folderOf({ [goodPaths.source]: source });
    symlinkSync('lantern-sheet.yaml', join(folder, 'sources/other.yaml'));
    expect(read(folder)).toEqual([
      [goodPaths.source, null],
      ['sources/other.yaml', 'symlink'],
    ]);
  });

  test('that leads to a file outside of it', () => {
    const folder = folderOf({ [goodPaths.source]: source });
    symlinkSync(join(outside(), 'secret.yaml'), join(folder, 'sources/other.yaml'));
    expect(findings(folder)).toEqual([
      'sources/other.yaml file/link 1:1 This is a symbolic link, which a registry does not follow | Put the file itself here.',
    ]);
    expect(loadFolders([folder]).registry.documents).toHaveLength(1);
  });

  test('that stands for a folder, here or elsewhere, or for nothing', () => {
    const folder = folderOf({ [goodPaths.source]: source });
    symlinkSync('sources', join(folder, 'here'));
    symlinkSync(outside(), join(folder, 'elsewhere'));
    symlinkSync('nothing', join(folder, 'nowhere'));
    symlinkSync('.', join(folder, 'round'));
    expect(read(folder)).toEqual([
      ['elsewhere', 'symlink'],
      ['here', 'symlink'],
      ['nowhere', 'symlink'],
      ['round', 'symlink'],
      [goodPaths.source, null],
    ]);
  });

  test('that stands for the readings of a trial', () => {
    const folder = folderOf({ 'trials/2026/a.yaml': '' });
    symlinkSync(join(outside(), 'secret.yaml'), join(folder, 'trials/2026/a.csv'));
    expect(readRegistryFile({ folder, shown: '' }, 'trials/2026/a.csv')).toMatchObject({
      problem: 'symlink',
    });
  });
});

describe('a file is refused', () => {
  const padded = (size: number) => source + '#'.repeat(size - Buffer.byteLength(source));

  test('above 1 MiB, and read up to it', () => {
    const folder = folderOf({ 'sources/a.yaml': padded(1_048_577), 'sources/b.yaml': padded(1_048_576) });
    expect(read(folder)).toEqual([
      ['sources/a.yaml', 'tooLarge'],
      ['sources/b.yaml', null],
    ]);
    expect(findings(folder)[0]).toBe(
      'sources/a.yaml file/too-large 1:1 The file is larger than 1 MiB | Split it; long series of readings belong into a CSV file beside their trial.',
    );
  });

  test.each([
    ['Latin-1', Buffer.from('title: Prüfstand\n', 'latin1')],
    ['UTF-16', Buffer.from('\uFEFFtitle: x\n', 'utf16le')],
    ['half of a character', Buffer.from('title: ü\n').subarray(0, 8)],
  ])('that is not UTF-8 but %s', (_, bytes) => {
    expect(findings(folderOf({ 'sources/a.yaml': bytes }))).toEqual([
      'sources/a.yaml file/encoding 1:1 The file is not UTF-8 text | Save it as UTF-8; most editors ask for the encoding in "save as".',
    ]);
  });

  test('that is not there', () => {
    expect(readRegistryFile({ folder: folderOf({}), shown: 'p' }, 'sources/a.yaml')).toEqual({
      ok: false,
      path: 'p/sources/a.yaml',
      relativePath: 'sources/a.yaml',
      problem: 'missing',
    });
  });

  test('that is a folder', () => {
    const folder = folderOf({});
    mkdirSync(join(folder, 'a.yaml'));
    expect(readRegistryFile({ folder, shown: '' }, 'a.yaml')).toMatchObject({ problem: 'unreadable' });
  });

  test('in a folder deeper than any kind needs', () => {
    const folder = folderOf({ 'machines/1/2/3/a.yaml': source, 'machines/1/2/3/4/b.yaml': source });
    expect(read(folder)).toEqual([
      ['machines/1/2/3/4', 'tooDeep'],
      ['machines/1/2/3/a.yaml', null],
    ]);
  });
});

describe('what is in a file', () => {
  test('may begin with a byte-order mark', () => {
    expect(findings(folderOf({ [goodPaths.source]: `\uFEFF${source}` }))).toEqual([]);
  });

  test('pollutes nothing by the key __proto__', () => {
    const folder = folderOf({
      [goodPaths.source]: changed('source', 'standing: read', '__proto__: {standing: read}'),
    });
    expect(findings(folder).map((finding) => finding.split(' |')[0])).toEqual([
      `${goodPaths.source} shape/missing-key 1:1 This document lacks "standing": how the registry knows it: read in full or in part, read as quoted by another, or recalled and still to be looked up`,
      `${goodPaths.source} shape/unknown-key 7:1 "__proto__" is not a key that this kind of document knows`,
    ]);
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect('standing' in {}).toBe(false);
  });
});

describe('a name that cannot stand on every system is refused', () => {
  test.each([
    ['sources/con.yaml'],
    ['sources/AUX.yaml'],
    ['nul/lantern.yaml'],
    ['sources/a:b.yaml'],
    ['sources/line\nend.yaml'],
    ['sources /lantern.yaml'],
  ])('%j', (path) => {
    const folder = folderOf({ [path]: source });
    expect(read(folder).map(([, problem]) => problem)).toEqual(['badName']);
  });

  test('that is no UTF-8', () => {
    const folder = folderOf({ [goodPaths.source]: source });
    writeFileSync(
      Buffer.concat([Buffer.from(`${folder}/sources/caf`), Buffer.from([0xe9]), Buffer.from('.yaml')]),
      source,
    );
    expect(read(folder)).toEqual([
      ['sources/caf\uFFFD.yaml', 'badName'],
      [goodPaths.source, null],
    ]);
    expect(findings(folder)).toEqual([expect.stringContaining('file/name 1:1 This name cannot stand')]);
  });

  test('but not one that only begins so', () => {
    const folder = folderOf({ 'sources/console.yaml': source, 'sources/auxiliary-sheet.yaml': source });
    expect(read(folder).map(([, problem]) => problem)).toEqual([null, null]);
  });
});

test('a pipe or a device is no profile, and is not waited for', () => {
  const folder = folderOf({ [goodPaths.source]: source });
  execFileSync('mkfifo', [join(folder, 'sources/pipe.yaml')]);
  symlinkSync('/dev/zero', join(folder, 'sources/zero.yaml'));
  expect(read(folder)).toEqual([
    [goodPaths.source, null],
    ['sources/pipe.yaml', 'unreadable'],
    ['sources/zero.yaml', 'symlink'],
  ]);
});
