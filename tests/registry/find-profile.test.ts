import { expect, test } from 'vitest';
import { findProfile } from '../../src/registry/find-profile.ts';
import { loadFiles } from '../../src/registry/load-files.ts';
import { goodFiles, goodPaths } from './folder-of.ts';

function registryOf(files: Readonly<Record<string, string>>) {
  return loadFiles([{ folder: '', texts: new Map(Object.entries(files)) }]).registry;
}

test('a profile is found by its kind and id', () => {
  const found = findProfile(registryOf(goodFiles), 'machine', 'brackwater/lantern');
  expect(found).toMatchObject({ ok: true, value: { kind: 'machine', id: 'brackwater/lantern' } });
});

test('one that is not there has a code of its kind and the id that may be meant', () => {
  expect(findProfile(registryOf(goodFiles), 'job', 'mask-rak')).toEqual({
    ok: false,
    error: {
      code: 'unknownJob',
      message: 'There is no job "mask-rak"',
      help: 'Did you mean "mask-rack"?',
    },
  });
});

test('one whose file has errors is not said to be missing', () => {
  const files = { ...goodFiles, [goodPaths.polymer]: 'kind: polymer\nid: PLA\nname: 3\n' };
  expect(findProfile(registryOf(files), 'polymer', 'PLA')).toMatchObject({
    ok: false,
    error: { code: 'unknownPolymer', message: 'The file of the polymer "PLA" has errors' },
  });
});
