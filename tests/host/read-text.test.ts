import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readText } from '../../src/host/read-text.ts';
import { temporaryFolder } from '../sample-registry.ts';

const kind = { name: 'note', mostBytes: 8 } as const;

test('the text of a file comes without its byte-order mark', () => {
  const cwd = temporaryFolder();
  writeFileSync(join(cwd, 'a.txt'), '\uFEFFé\n');
  expect(readText('a.txt', cwd, kind)).toEqual({ ok: true, value: 'é\n' });
});

test.each<[string, string | Uint8Array, string, string]>([
  ['large.txt', '123456789', 'tooLarge', 'large.txt is too large for a note'],
  ['latin.txt', Buffer.from('é', 'latin1'), 'notUtf8', 'latin.txt is not UTF-8 text'],
])('%s is refused', (name, content, code, message) => {
  const cwd = temporaryFolder();
  writeFileSync(join(cwd, name), content);
  expect(readText(name, cwd, kind)).toMatchObject({ ok: false, error: { code, message } });
});

test('a folder and a file that is not there cannot be read', () => {
  const cwd = temporaryFolder();
  mkdirSync(join(cwd, 'a'));
  const unreadable = { ok: false, error: { code: 'unreadable' } };
  expect(readText('a', cwd, { ...kind, mostBytes: 1_000_000 })).toMatchObject(unreadable);
  expect(readText('b', cwd, kind)).toMatchObject(unreadable);
});
