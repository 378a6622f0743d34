import { describe, expect, test } from 'vitest';
import {
  expectedPath,
  identityOfPath,
  isKind,
  kindFolders,
  kindOfFolder,
  kinds,
} from '../../src/registry/kind.ts';

test.each(kinds)('the folder of the kind %s leads back to it', (kind) => {
  expect(kindOfFolder(kindFolders[kind])).toBe(kind);
});

test('only the kinds are kinds', () => {
  expect(['machine', 'machines', '__proto__', '', null, 0].map(isKind)).toEqual([
    true,
    false,
    false,
    false,
    false,
    false,
  ]);
  expect(kindOfFolder('machine')).toBeNull();
});

describe('what a path stands for', () => {
  test.each([
    ['machines/brackwater/lantern.yaml', { kind: 'machine', id: 'brackwater/lantern' }],
    ['polymers/PS-HI.yml', { kind: 'polymer', id: 'PS-HI' }],
    ['trials/2026/lantern-230.yaml', { kind: 'trial', id: 'lantern-230' }],
    ['sources/a.b.yaml', { kind: 'source', id: 'a.b' }],
    ['machnes/a/b.yaml', null],
    ['machines.yaml', null],
    ['readme.yaml', null],
  ])('%s', (path, identity) => {
    expect(identityOfPath(path)).toEqual(identity);
  });

  test.each(kinds)('the path at which a %s belongs stands for it', (kind) => {
    expect(identityOfPath(expectedPath(kind, 'some-id', '2026'))).toEqual({ kind, id: 'some-id' });
  });

  test('a trial belongs under its year', () => {
    expect(expectedPath('trial', 'a', '2026')).toBe('trials/2026/a.yaml');
    expect(expectedPath('job', 'a', '2026')).toBe('jobs/a.yaml');
  });
});
