import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { folderChanges } from '../../src/host/folder-changes.ts';

function watchedFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'meltbounds-watched-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  mkdirSync(join(folder, 'machines'));
  return folder;
}

it('tells of what has changed since it began, and again of the next change', async () => {
  const folder = watchedFolder();
  const changes = folderChanges([folder])[Symbol.asyncIterator]();
  writeFileSync(join(folder, 'machines', 'one.yaml'), 'id: one');
  expect((await changes.next()).done).toBe(false);
  const next = changes.next();
  writeFileSync(join(folder, 'machines', 'one.yaml'), 'id: other');
  expect((await next).done).toBe(false);
  await changes.return?.();
});

it('throws what the system says of a folder that is not there', () => {
  expect(() => folderChanges([join(watchedFolder(), 'gone')])).toThrow(/ENOENT/);
});
