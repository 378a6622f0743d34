import { expect, test } from 'vitest';
import { runDocument } from '../../scripts/docs/run-document.ts';
import { refreshed } from '../../scripts/docs/shown-output.ts';
import { temporaryFolder } from '../sample-registry.ts';

const document = (...lines: string[]) => `${lines.join('\n')}\n`;

test('a command that fails is reported with its line and what it printed', async () => {
  const text = document('# Page', '', '```sh', 'npx meltbounds rules no/such', '```');
  const { failures } = await runDocument(text, temporaryFolder());
  expect(failures).toEqual([
    expect.stringMatching(/^line 3: "npx meltbounds rules no\/such" ended with 2, not 0/),
  ]);
});

test('a block with a path is a file for the commands below it', async () => {
  const text = document('```csv notes.csv', 'a', '```', '', '```sh', 'cp notes.csv copy.csv', '```');
  expect((await runDocument(text, temporaryFolder())).failures).toEqual([]);
});

test('a diff that does not fit is reported', async () => {
  const text = document('```diff profiles/policies/workshop.yaml', '-no such line', '+other', '```');
  const { failures } = await runDocument(text, temporaryFolder());
  expect(failures).toEqual(['line 1: the lines to replace stand 0 times in profiles/policies/workshop.yaml']);
});

test('an output block belongs to the commands right above it', async () => {
  const text = document('```sh', 'npx meltbounds --version', '```', '', '```text', 'old', '```');
  const { outputs } = await runDocument(text, temporaryFolder());
  expect(outputs.map(({ block, printed }) => [block.text, printed])).toEqual([['old\n', '0.0.0\n']]);
});

test('shown lines must be the printed ones', () => {
  expect(refreshed('one\ntwo\n', 'one  \ntwo\n\n')).toBe('one\ntwo\n');
  expect(refreshed('one\ntwo\n', 'one\n2\n')).toBe('one\n2\n');
});

test('a line … stands for what is left out, and stays where it is', () => {
  expect(refreshed('a\n…\nz\n', 'A\nB\nC\nZ\n')).toBe('A\n…\nZ\n');
  expect(refreshed('A\n…\nZ\n', 'A\nB\nZ\n')).toBe('A\n…\nZ\n');
  expect(refreshed('A\n…\nZ\n', 'A\nZ\n')).toBe('A\nZ\n');
});
