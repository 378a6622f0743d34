import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { filesOfFolders, loadFolders } from '../../src/host/load-registry.ts';
import { kinds } from '../../src/registry/kind.ts';
import { linkFiles } from '../../src/registry/load-files.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import { folderOf, goodFiles, goodPaths } from '../registry/folder-of.ts';
import { changed, goodTexts } from '../registry/good-documents.ts';

const aboutForm = /^(?:file|syntax|shape|units|identity|references)\//;

/** `FILE RULE` of what is wrong with the form and the links of the registry in a folder. */
function wrong(folder: string): string[] {
  return checkRegistry(loadFolders([folder], folder), { today: '2026-12-31' })
    .filter(({ rule }) => aboutForm.test(rule))
    .map(({ file, rule }) => `${file} ${rule}`);
}

test('a good registry is read whole and has no finding', () => {
  const folder = folderOf(goodFiles);
  const { registry, files } = loadFolders([folder], folder);
  expect(wrong(folder)).toEqual([]);
  expect(kinds.map((kind) => registry[kind].size)).toEqual(kinds.map(() => 1));
  expect(files).toEqual(Object.keys(goodFiles).toSorted());
});

describe('several folders', () => {
  const first = { [goodPaths.source]: goodTexts.source, [goodPaths.polymer]: goodTexts.polymer };
  const added = changed('source', 'id: lantern-sheet', 'id: another-sheet');

  test('are one registry: later ones add to earlier ones', () => {
    const folder = folderOf({
      ...Object.fromEntries(Object.entries(first).map(([path, text]) => [`a/${path}`, text])),
      'b/sources/another-sheet.yaml': added,
    });
    const { registry, findings, files } = loadFolders(['a', 'b'], folder);
    expect([...registry.source.keys()]).toEqual(['lantern-sheet', 'another-sheet']);
    expect(findings).toEqual([]);
    expect(files).toEqual([
      `a/${goodPaths.polymer}`,
      `a/${goodPaths.source}`,
      'b/sources/another-sheet.yaml',
    ]);
  });

  test('that describe the same document: the earlier one counts, the later one has a finding', () => {
    const folder = folderOf({
      [`a/${goodPaths.source}`]: goodTexts.source,
      [`b/${goodPaths.source}`]: changed('source', 'Data sheet, invented', 'Another title'),
    });
    const loaded = loadFolders(['a', 'b'], folder);
    expect(loaded.registry.source.get('lantern-sheet')?.data.title).toBe('Data sheet, invented');
    const [finding] = checkRegistry(loaded, { today: '2026-12-31' });
    expect(finding).toMatchObject({
      rule: 'identity/duplicate-id',
      file: `b/${goodPaths.source}`,
      line: 2,
      column: 5,
    });
    expect(loadFolders(['b', 'a'], folder).registry.source.get('lantern-sheet')?.data.title).toBe(
      'Another title',
    );
  });

  test('and single files from elsewhere', () => {
    const folder = folderOf({
      [`a/${goodPaths.source}`]: goodTexts.source,
      'loose/PLA.yaml': goodTexts.polymer,
    });
    const { registry, files } = linkFiles(filesOfFolders(['a'], ['loose/PLA.yaml'], folder));
    expect(registry.polymer.has('PLA')).toBe(true);
    expect(files).toEqual([`a/${goodPaths.source}`, 'loose/PLA.yaml']);
  });

  test('one that is not there holds nothing', () => {
    expect(loadFolders(['nowhere'], folderOf({})).files).toEqual([]);
  });
});

describe('a broken file', () => {
  test.each([
    ['in its syntax', 'kind: source\nid: [\n', 'syntax/yaml'],
    ['in its shape', changed('source', 'type: document\n', ''), 'shape/missing-key'],
    ['of which nothing is left', '', 'syntax/empty'],
  ])('%s hides no other file, and what refers to it does not dangle', (_, text, rule) => {
    const folder = folderOf({ ...goodFiles, [goodPaths.source]: text });
    expect(wrong(folder)).toEqual([`${goodPaths.source} ${rule}`]);
    expect(loadFolders([folder]).registry.machine.size).toBe(1);
  });

  test('with a statement that cannot be read still shows its dangling references', () => {
    const machine = changed(
      'machine',
      '110 Cel, basis: claimed, source: lantern-sheet',
      '110 mm, basis: claimed, source: nowhere',
    );
    const twice = machine.replace(
      '1580 EUR, basis: claimed, source: lantern-sheet',
      '1580 EUR, basis: claimed, source: elsewhere',
    );
    expect(wrong(folderOf({ ...goodFiles, [goodPaths.machine]: twice }))).toEqual([
      `${goodPaths.machine} units/wrong-dimension`,
      `${goodPaths.machine} references/dangling`,
      `${goodPaths.machine} references/dangling`,
    ]);
  });

  test('with a key twice is still judged', () => {
    const policy = `${goodTexts.policy}name: Again\n`;
    expect(wrong(folderOf({ ...goodFiles, [goodPaths.policy]: policy }))).toEqual([
      `${goodPaths.policy} syntax/duplicate-key`,
    ]);
  });

  test('of an unknown kind outside of the folders of the kinds is reported', () => {
    expect(wrong(folderOf({ 'machnes/a/b.yaml': 'id: a/b\n' }))).toEqual([
      'machnes/a/b.yaml shape/not-a-choice',
    ]);
  });

  test('that is missing leaves what refers to it dangling', () => {
    const { [goodPaths.polymer]: _, ...rest } = goodFiles;
    expect(wrong(folderOf(rest))).toEqual([`${goodPaths.filament} references/dangling`]);
  });
});

describe('the readings of a trial in a file of their own', () => {
  const readings = 'commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]\n20,500,1.49\n28,500,1.48\n';
  const trial = (name: string) =>
    `${goodTexts.trial.slice(0, goodTexts.trial.indexOf('observations:'))}observations: {file: ${name}}\n`;

  test('are read from beside the trial', () => {
    const folder = folderOf({
      ...goodFiles,
      [goodPaths.trial]: trial('ladder.csv'),
      'trials/2026/ladder.csv': readings,
    });
    const { registry, texts, files } = loadFolders([folder], folder);
    expect(registry.trial.get('lantern-pla-230')?.attachment).toMatchObject({
      ok: true,
      source: { text: readings },
    });
    expect(texts.get('trials/2026/ladder.csv')).toBe(readings);
    expect(files).not.toContain('trials/2026/ladder.csv');
  });

  test('that are missing are a problem of the trial alone', () => {
    const folder = folderOf({ ...goodFiles, [goodPaths.trial]: trial('ladder.csv') });
    expect(loadFolders([folder]).registry.trial.get('lantern-pla-230')?.attachment).toMatchObject({
      ok: false,
      problem: 'missing',
    });
    expect(wrong(folder)).toEqual([]);
  });

  test.each(['../secret.csv', '../../secret.csv', '/secret.csv'])('are not sought at %s', (name) => {
    const folder = folderOf({
      ...goodFiles,
      [goodPaths.trial]: trial(name),
      'secret.csv': readings,
      'trials/secret.csv': readings,
    });
    const { findings, texts } = loadFolders([folder], folder);
    expect(findings).toMatchObject([{ rule: 'shape/text-form', pointer: '/observations/file' }]);
    expect([...texts.keys()].filter((path) => path.endsWith('.csv'))).toEqual([]);
  });
});

describe('the same registry gives the same result', () => {
  const files = {
    ...goodFiles,
    [goodPaths.job]: changed('job', '30 m', '30 s'),
    [goodPaths.machine]: changed('machine', 'layout: gantry', 'layout: robot').replace('470 mm/s', '470'),
    'sources/zeta.yaml': 'kind: source\n',
    'sources/Alpha.yaml': 'kind: source\n',
  };
  const everything = (folder: string) => {
    const { findings, files: paths, registry } = loadFolders([folder], folder);
    return { findings, paths, digests: registry.documents.map(({ source }) => source.digest) };
  };

  test('whatever the order in which the files were made', () => {
    const reversed = Object.fromEntries(Object.entries(files).toReversed());
    expect(everything(folderOf(reversed))).toEqual(everything(folderOf(files)));
  });

  test('with CRLF line ends: findings, places and digests', () => {
    const crlf = Object.fromEntries(
      Object.entries(files).map(([path, text]) => [path, text.replaceAll('\n', '\r\n')]),
    );
    expect(everything(folderOf(crlf))).toEqual(everything(folderOf(files)));
  });

  test('findings come by file, whatever the order of the folders', () => {
    const folder = folderOf({ 'a/sources/x.yaml': '', 'b/sources/x.yaml': '' });
    const shown = loadFolders(['b', 'a'], folder).findings.map(({ file }) => file);
    expect(shown).toEqual(['a/sources/x.yaml', 'b/sources/x.yaml']);
  });

  test('findings come by file, then by line', () => {
    const { findings } = everything(folderOf(files));
    expect(findings.map(({ file, line }) => `${file}:${line}`)).toEqual([
      `${goodPaths.job}:8`,
      `${goodPaths.machine}:7`,
      `${goodPaths.machine}:10`,
      ...Array.from({ length: 4 }, () => 'sources/Alpha.yaml:1'),
      ...Array.from({ length: 4 }, () => 'sources/zeta.yaml:1'),
    ]);
  });
});

describe('files are shown', () => {
  const folder = () => folderOf({ [`profiles/${goodPaths.source}`]: goodTexts.source });

  test('relative to the base, however the folder was given', () => {
    const base = folder();
    for (const given of ['profiles', './profiles/', 'profiles/../profiles', join(base, 'profiles')]) {
      expect(loadFolders([given], base).files).toEqual([`profiles/${goodPaths.source}`]);
    }
    expect(loadFolders(['.'], join(base, 'profiles')).files).toEqual([goodPaths.source]);
  });

  test('in full where they are outside of the base', () => {
    const base = folder();
    expect(loadFolders(['../profiles'], join(base, 'elsewhere')).files).toEqual([
      join(base, 'profiles', goodPaths.source),
    ]);
  });

  test('by a path under which their text is found', () => {
    const base = folder();
    const { texts, files } = loadFolders(['profiles'], base);
    expect(files.map((file) => texts.get(file))).toEqual([goodTexts.source]);
  });

  test('but the path from the root of the registry is what their id is held against', () => {
    const { registry } = loadFolders(['profiles'], folder());
    expect(registry.source.get('lantern-sheet')?.source.relativePath).toBe(goodPaths.source);
  });
});
