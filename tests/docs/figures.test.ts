import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { blocksOf } from '../../scripts/docs/document-blocks.ts';
import { readDocument } from '../../scripts/docs/documents.ts';
import { runCommand } from '../run-command.ts';
import { temporaryFolder } from '../sample-registry.ts';

const profiles = fileURLToPath(new URL('../../profiles', import.meta.url));
const sheet = blocksOf(readDocument('docs/tutorial.md')).find(({ words }) => words[0] === 'ladder.csv');
const facts = ['--diameter', '1.75 mm', '--density', '1.24 g/cm3', '--resolution', '0.01 g'];

test.each([
  ['tutorial-ladder', ['ladder.csv', '--method', 'flowLadder', ...facts]],
  ['flow-ladder', ['lantern-stagecraft-petg-245']],
  ['limit-line', ['brackwater/lantern', 'ashgrove/stagecraft-pla', '--nozzle', 'hs-0.6', '--at', '235 Cel']],
])('docs/figures/%s.svg is what its command draws', async (name, subject) => {
  const cwd = temporaryFolder();
  cpSync(profiles, join(cwd, 'profiles'), { recursive: true });
  writeFileSync(join(cwd, 'ladder.csv'), sheet?.text ?? '');
  const { status } = await runCommand(cwd, ['reduce', ...subject, '--plot', 'figure.svg']);
  expect(status).toBe(0);
  await expect(readFileSync(join(cwd, 'figure.svg'), 'utf8')).toMatchFileSnapshot(
    `../../docs/figures/${name}.svg`,
  );
});
