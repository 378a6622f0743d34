import { createContext, Script } from 'node:vm';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { benchScriptsModule } from '../../scripts/generate/bench-scripts.ts';
import { siteScriptModule } from '../../scripts/generate/site-script.ts';
import { unpackedScript } from '../../src/site/bench/bench-files.ts';
import { scriptOf } from '../../src/site/data/data-scripts.ts';
import { benchScript, benchWorkerScript, offlineScript } from '../../src/site/generated/bench-scripts.ts';
import { siteScript } from '../../src/site/generated/site-script.ts';

it('the script of the catalogue is the one that its sources give', async () => {
  expect(await siteScriptModule()).toContain(JSON.stringify(siteScript));
});

it('the script of the catalogue is small', () => {
  expect(gzipSync(siteScript).length).toBeLessThan(25_000);
});

it('the scripts of the bench page are the ones that their sources give', async () => {
  const module = await benchScriptsModule();
  for (const script of [benchScript, benchWorkerScript, offlineScript])
    expect(module.includes(`'${script}'`)).toBe(true);
});

it.each([
  ['page', benchScript, 25_000],
  ['worker', benchWorkerScript, 250_000],
  ['offline', offlineScript, 1000],
])('the %s script of the bench is small', (_, script, most) => {
  expect(gzipSync(unpackedScript(script)).length).toBeLessThan(most);
});

it('the data are a script that gives them back, whatever a text says', () => {
  const value = { text: '</script><!-- \u2028\u202E\u009B##[error]{}"\\' };
  const text = scriptOf('answer', value);
  const context = createContext({});
  new Script(text).runInContext(context);
  expect(JSON.stringify(context.answer)).toBe(JSON.stringify(value));
  expect(text).not.toMatch(/[<\u2028\u202E\u009B]|##\[/);
});
