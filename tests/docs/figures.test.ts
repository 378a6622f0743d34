import { cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { runCommand } from '../run-command.ts';
import { temporaryFolder } from '../sample-registry.ts';

const profiles = fileURLToPath(new URL('../../profiles', import.meta.url));

test.each([
  ['flow-ladder', ['lantern-stagecraft-petg-245']],
  ['limit-line', ['brackwater/lantern', 'ashgrove/stagecraft-pla', '--nozzle', 'hs-0.6', '--at', '235 Cel']],
])('docs/figures/%s.svg is what its command draws', async (name, subject) => {
  const cwd = temporaryFolder();
  cpSync(profiles, join(cwd, 'profiles'), { recursive: true });
  const { status } = await runCommand(cwd, ['reduce', ...subject, '--plot', 'figure.svg']);
  expect(status).toBe(0);
  await expect(readFileSync(join(cwd, 'figure.svg'), 'utf8')).toMatchFileSnapshot(
    `../../docs/figures/${name}.svg`,
  );
});
