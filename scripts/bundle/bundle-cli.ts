import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type ChunkingContext, rolldown } from 'rolldown';
import { sha256Of } from '../../src/text/sha256.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Modules that are one file each with all that they import, but for what an earlier one holds already. What is in none of
 * them comes as the bundler sees fit.
 */
const together = [
  ['program', 'src/commands/run.ts'],
  ['commands', 'src/commands/commands.ts'],
  ['check', 'src/commands/check/run-check.ts'],
  ['judge', 'src/commands/check/judge.ts'],
] as const;

/** What stands in for modules that run anywhere, where Node has the same built in and is faster. */
const ofNode: ReadonlyMap<string, string> = new Map([
  [join(root, 'src/text/sha256.ts'), readFileSync(join(root, 'scripts/bundle/sha256.ts'), 'utf8')],
]);

/**
 * Bundles the command line into a folder at the root of the package: `cli.cjs`, which starts `main.cjs`, and in `cli/` what
 * the commands load when they need it; as CommonJS, of which the launcher can keep what the machine makes. A program of some 600 modules takes longer to find them than to do its work, and of a hundred
 * small files that `check` needs half, too.
 */
export async function bundleCli(folder: string): Promise<void> {
  const bundle = await rolldown({
    cwd: root,
    input: { main: 'src/cli.ts', 'cli/worker': 'src/host/worker.ts' },
    platform: 'node',
    plugins: [{ name: 'of-node', load: (id) => ofNode.get(id) ?? null }],
    transform: { target: 'node20.19' },
    preserveEntrySignatures: false,
    logLevel: 'warn',
  });
  rmSync(join(root, folder, 'cli'), { recursive: true, force: true });
  const { output } = await bundle.write({
    dir: folder,
    format: 'cjs',
    minify: true,
    entryFileNames: '[name].cjs',
    chunkFileNames: 'cli/[name]-[hash].cjs',
    codeSplitting: {
      includeDependenciesRecursively: false,
      groups: [{ name: fileOfModule(), debugName: 'together' }],
    },
  });
  await bundle.close();
  const modules = output.flatMap((file) => (file.type === 'chunk' ? file.moduleIds : []));
  writeFileSync(join(root, folder, 'cli', 'LICENSES.txt'), licencesOf(modules));
  const texts = output.map((file) => (file.type === 'chunk' ? file.code : ''));
  await bundleLauncher(folder, sha256Of(texts.join('\n')).slice(0, 16));
}

/** What starts the parts, as CommonJS, which Node starts sooner; it is told which build they are of. */
async function bundleLauncher(folder: string, build: string): Promise<void> {
  const bundle = await rolldown({
    cwd: root,
    input: { cli: 'src/host/launch.ts' },
    platform: 'node',
    transform: { target: 'node20.19', define: { build: JSON.stringify(build) } },
    logLevel: 'warn',
  });
  await bundle.write({ dir: folder, format: 'cjs', entryFileNames: '[name].cjs', minify: true });
  await bundle.close();
}

/** Tells of a module which file it goes into. */
function fileOfModule(): (id: string, modules: ChunkingContext) => string | null {
  let files: ReadonlyMap<string, string> | null = null;
  return (id, modules) => {
    files ??= filesOfModules(modules);
    return files.get(id) ?? null;
  };
}

function filesOfModules(modules: ChunkingContext): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  for (const [file, path] of together) {
    const reached = new Set([join(root, path)]);
    // A set is walked in the order in which its members were added, those added on the way too.
    for (const each of reached) {
      if (files.has(each)) continue;
      files.set(each, file);
      for (const imported of modules.getModuleInfo(each)?.importedIds ?? []) reached.add(imported);
    }
  }
  return files;
}

/** The licences of the packages that files belong to, which ask to be copied with the code. */
function licencesOf(files: readonly string[]): string {
  const packages = files.map((file) => /\/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1]);
  const names = [...new Set(packages.filter((name) => name !== undefined))].sort();
  return names.map((name) => `${name}\n\n${licenceOf(name)}\n`).join('\n');
}

function licenceOf(name: string): string {
  const folder = join(root, 'node_modules', name);
  const file = readdirSync(folder).find((each) => /^licen[cs]e/i.test(each));
  if (file === undefined) throw new Error(`${name} comes without the text of its licence`);
  return readFileSync(join(folder, file), 'utf8').trim();
}
