import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createContext, Script } from 'node:vm';
import { build } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { coreResults } from './core-program.ts';

const root = fileURLToPath(new URL('..', import.meta.url));

/** A program bundled for browsers and minified by esbuild; nothing stands in for the modules of Node. */
async function bundled(program: string, format: 'iife' | 'esm'): Promise<string> {
  const { outputFiles } = await build({
    stdin: { contents: program, resolveDir: root, loader: 'ts' },
    bundle: true,
    minify: true,
    platform: 'browser',
    format,
    globalName: 'bundle',
    write: false,
    logLevel: 'silent',
  });
  return outputFiles.map(({ text }) => text).join('');
}

describe('a bundle for browsers', () => {
  it('of the core loads, checks, reduces, derives, judges and plans the same as the program', {
    tags: 'long',
  }, async () => {
    const texts = demoTexts();
    // The language itself and what a browser has besides, as far as the core needs it: no process, Buffer or require.
    const context = createContext({ structuredClone, TextDecoder, TextEncoder, URL, texts });
    new Script(await bundled("export { coreResults } from './tests/core-program.ts';", 'iife')).runInContext(
      context,
    );
    const there = new Script('bundle.coreResults(texts)').runInContext(context) as string;
    const here = coreResults(texts);
    expect(JSON.parse(there)).toEqual(JSON.parse(here));
    expect(there).toBe(here);
    expect(JSON.parse(here)).toMatchObject({
      reductions: [{ ok: true }, { ok: true }],
      plan: { ok: true },
      next: { ok: true, value: { ok: true } },
    });
  });

  // Bytes of the minified bundle, before compression; a few per cent above what they are. Eleven methods are in the first, what reads sheets in any form, and what judges each reading by the others (10 000).
  it.each([
    ['reduceTrial', 'src/api/bench.ts', 170_000],
    ['reduceTrial', 'src/core.ts', 170_000],
    ['drawPlot', 'src/api/plots.ts', 36_000],
    ['parseQuantity', 'src/api/units.ts', 16_000],
    ['leastSquares', 'src/api/statistics.ts', 3000],
    ['beadArea', 'src/api/physics.ts', 300],
  ])('of `%s` from %s alone is small', async (name, file, most) => {
    const bytes = Buffer.byteLength(await bundled(`export { ${name} } from './${file}';`, 'esm'));
    expect(bytes).toBeLessThan(most);
    expect(bytes).toBeGreaterThan(most / 10);
  });
});

/** The demo registry as a page would have it: texts by their paths. */
function demoTexts(): ReadonlyMap<string, string> {
  const folder = join(root, 'profiles');
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  const paths = entries
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));
  return new Map(
    paths.map((path) => [path.slice(folder.length + 1).replaceAll('\\', '/'), readFileSync(path, 'utf8')]),
  );
}
