import { createContext, Script } from 'node:vm';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { benchScriptsModule } from '../../scripts/generate/bench-scripts.ts';
import { siteScriptModule } from '../../scripts/generate/site-script.ts';
import { unpackedScript } from '../../src/site/bench/bench-files.ts';
import { scriptOf } from '../../src/site/data/data-scripts.ts';
import { benchScript, benchWorkerScript, offlineScript } from '../../src/site/generated/bench-scripts.ts';
import { compareScript, siteScript } from '../../src/site/generated/site-script.ts';

it('the scripts of the catalogue are the ones that their sources give', async () => {
  const module = await siteScriptModule();
  for (const script of [siteScript, compareScript]) expect(module.includes(`'${script}'`)).toBe(true);
});

it('the scripts of the bench page are the ones that their sources give', async () => {
  const module = await benchScriptsModule();
  for (const script of [benchScript, benchWorkerScript, offlineScript])
    expect(module.includes(`'${script}'`)).toBe(true);
});

const sizeOf = (script: string) => gzipSync(unpackedScript(script)).length;

it.each([
  ['first page', siteScript, 10_000],
  ['comparison', compareScript, 40_000],
  ['bench page', benchScript, 25_000],
  ['worker of the bench', benchWorkerScript, 250_000],
  ['bench without a network', offlineScript, 1000],
])('the script of the %s is small', (_, script, most) => {
  expect(sizeOf(script)).toBeLessThan(most);
});

it('all scripts of the catalogue together are below 100 kB, gzipped, without the worker', () => {
  const sizes = [siteScript, compareScript, benchScript, offlineScript].map(sizeOf);
  expect(sizes.reduce((sum, size) => sum + size)).toBeLessThan(100_000);
});

it('the data are a script that gives them back, whatever a text says', () => {
  const value = { text: '</script><!-- \u2028\u202E\u009B##[error]{}"\\' };
  const text = scriptOf('answer', value);
  const context = createContext({});
  new Script(text).runInContext(context);
  expect(JSON.stringify(context.answer)).toBe(JSON.stringify(value));
  expect(text).not.toMatch(/[<\u2028\u202E\u009B]|##\[/);
});
