import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { writeCommonJsTypes } from '../../scripts/bundle/commonjs-types.ts';
import { temporaryFolder } from '../sample-registry.ts';

it('types for `require` stand beside each entrance, with every value by its name', async () => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'dist'));
  const entrance = {
    types: { require: './dist/sum.d.cts', default: './dist/sum.d.ts' },
    default: './dist/sum.mjs',
  };
  writeFileSync(
    join(folder, 'package.json'),
    JSON.stringify({ exports: { '.': entrance, './package.json': './package.json' } }),
  );
  writeFileSync(
    join(folder, 'dist/sum.mjs'),
    'export const sum = (a, b) => a + b;\nexport const none = 0;\n',
  );
  await writeCommonJsTypes(folder);
  expect(
    readFileSync(join(folder, 'dist/sum.d.cts'), 'utf8'),
  ).toBe(`import type * as esm from './sum.mjs' with { 'resolution-mode': 'import' };
export type * from './sum.mjs' with { 'resolution-mode': 'import' };
export declare const none: typeof esm.none;
export declare const sum: typeof esm.sum;
`);
});
