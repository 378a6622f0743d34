import { spawnSync } from 'node:child_process';
import { cpSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { blocksOf } from '../../scripts/docs/document-blocks.ts';
import { projectFolder, readDocument } from '../../scripts/docs/documents.ts';
import { temporaryFolder } from '../sample-registry.ts';

test('the program that the page on programs shows runs as it stands', () => {
  const shown = blocksOf(readDocument('docs/how-to/use-from-a-program.md')).find(
    ({ language }) => language === 'ts',
  );
  const entrance = pathToFileURL(join(projectFolder, 'src/index.ts')).href;
  const cwd = temporaryFolder();
  cpSync(join(projectFolder, 'profiles'), join(cwd, 'profiles'), { recursive: true });
  writeFileSync(
    join(cwd, 'program.mts'),
    `${shown?.text.replace("'meltbounds'", `'${entrance}'`)}
console.log(JSON.stringify([findings.length, reduction.ok, table.ok]));
`,
  );
  const { stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', import.meta.resolve('tsx'), 'program.mts'],
    { cwd, encoding: 'utf8' },
  );
  expect(stderr).toBe('');
  expect(JSON.parse(stdout)).toEqual([0, true, true]);
});
