import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));

/** What CommonJS packages within the bundle expect to be there. */
const forPackages = [
  "import { createRequire as __createRequire } from 'node:module';",
  'const require = __createRequire(import.meta.url);',
  'const __filename = import.meta.filename, __dirname = import.meta.dirname;',
].join(' ');

/**
 * Bundles the command line into a folder at the root of the package: `cli.js`, and beside it in `cli/` what the commands
 * load when they need it. A program of some 600 modules takes longer to find them than to do its work.
 */
export async function bundleCli(folder: string): Promise<void> {
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: { cli: 'src/cli.ts', 'cli/worker': 'src/host/worker.ts' },
    outdir: folder,
    chunkNames: 'cli/[name]-[hash]',
    bundle: true,
    splitting: true,
    minify: true,
    format: 'esm',
    platform: 'node',
    target: 'node20.19',
    banner: { js: forPackages },
    legalComments: 'none',
    metafile: true,
    logLevel: 'warning',
  });
  writeFileSync(join(root, folder, 'cli', 'LICENSES.txt'), licencesOf(Object.keys(metafile.inputs)));
}

/** The licences of the packages that files belong to, which ask to be copied with the code. */
function licencesOf(files: readonly string[]): string {
  const packages = files.map((file) => /^node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1]);
  const names = [...new Set(packages.filter((name) => name !== undefined))].sort();
  return names.map((name) => `${name}\n\n${licenceOf(name)}\n`).join('\n');
}

function licenceOf(name: string): string {
  const folder = join(root, 'node_modules', name);
  const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
  if (file === undefined) throw new Error(`${name} comes without the text of its licence`);
  return readFileSync(join(folder, file), 'utf8').trim();
}
