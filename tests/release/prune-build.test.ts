import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';
import { pruneBuild } from '../../scripts/bundle/prune-build.ts';
import { temporaryFolder } from '../sample-registry.ts';

it('a build keeps what an entrance leads to, and nothing else', () => {
  const folder = temporaryFolder();
  const files: Readonly<Record<string, string>> = {
    'index.js': "export * from './core.js';\nconst late = () => import('./late.js');\n",
    'core.js': 'import{a}from"./inner/a.js";import"./effect.js";export{a};',
    'inner/a.js': "import { sum } from 'package';\nexport const a = sum;\n",
    'effect.js': '',
    'late.js': "import './core.js';\n",
    'command.js': "import './inner/a.js';\n",
    'index.d.ts': "export * from './core.ts';\n",
    'core.d.ts': "export declare const a: import('./inner/types.ts').A;\n",
    'inner/types.d.ts': 'export type A = number;\n',
    'inner/a.d.ts': 'export declare const a: number;\n',
    'cli.cjs': '',
  };
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  pruneBuild(folder, ['index']);
  const left = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.includes('.'),
  );
  const kept = ['index.js', 'core.js', 'inner/a.js', 'effect.js', 'late.js', 'cli.cjs'];
  expect(left.sort()).toEqual([...kept, 'index.d.ts', 'core.d.ts', 'inner/types.d.ts'].sort());
});
