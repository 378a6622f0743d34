/** @module-tag long */
import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../scripts/docs/document-blocks.ts';
import { documentPaths, projectFolder, readDocument } from '../../scripts/docs/documents.ts';
import { runDocument } from '../../scripts/docs/run-document.ts';
import { refreshed } from '../../scripts/docs/shown-output.ts';
import { sharedResults } from '../run-command.ts';
import { temporaryFolder } from '../sample-registry.ts';

const isFirstRead = (path: string) => path === 'README.md' || path === 'docs/tutorial.md';

// `npm run refresh-docs` writes today's output into the documents.
describe('every command of a document runs, and prints what the document shows:', () => {
  test.each(documentPaths().filter(isFirstRead))('%s', printsWhatItShows);

  test.each(documentPaths().filter((path) => !isFirstRead(path)))('%s', { tags: 'long' }, printsWhatItShows);
});

async function printsWhatItShows(path: string): Promise<void> {
  const { outputs, failures } = await runDocument(readDocument(path), temporaryFolder(), sharedResults);
  expect(failures).toEqual([]);
  for (const { block, printed } of outputs) expect(block.text).toBe(refreshed(block.text, printed));
}

test('the README shows what the demo prints', { tags: 'long' }, () => {
  const text = readDocument('README.md');
  const shown = blocksOf(text).find(({ start }) => start > text.indexOf('## What the demo shows'));
  const { stdout } = spawnSync(
    process.execPath,
    ['--import', import.meta.resolve('tsx'), 'scripts/demo.ts'],
    {
      cwd: projectFolder,
      encoding: 'utf8',
    },
  );
  const printed = stdout.split('\n').map((line) => line.trimEnd());
  expect(printed).toEqual(expect.arrayContaining(shown?.text.trimEnd().split('\n') ?? ['no block']));
});
