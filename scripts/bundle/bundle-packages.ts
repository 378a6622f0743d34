import { build, type Plugin } from 'esbuild';

/** Modules that bring the packages with them that they read or write files with: of each only one entrance is needed. */
export const carriedPackages: Readonly<Record<string, string>> = {
  'registry/yaml/plain-yaml': 'js-yaml',
  'host/read-workbook': 'read-excel-file/universal',
  'export/parquet-file': 'hyparquet-writer/src/index.js',
};

/** Leaves out what the module itself imports, but for its package, and what others install anyway. */
function onlyPackage(entry: string, carried: string): Plugin {
  return {
    name: 'only-package',
    setup: ({ onResolve }) => {
      onResolve({ filter: /.*/ }, ({ path, importer }) => {
        if (importer === '') return null;
        const isOwn = importer === entry && path !== carried;
        return isOwn || path === 'fflate' ? { path, external: true } : null;
      });
    },
  };
}

/**
 * Puts packages into the modules of a folder that use them, so that nobody installs all that they ship: with what they
 * depend on they are 5.5 MB, in the modules 0.2 MB.
 */
export async function bundlePackages(folder: string): Promise<void> {
  for (const [file, carried] of Object.entries(carriedPackages)) {
    const path = `${folder}/${file}.js`;
    await build({
      entryPoints: [path],
      outfile: path,
      allowOverwrite: true,
      bundle: true,
      format: 'esm',
      platform: 'neutral',
      // What packages have for browsers runs anywhere.
      conditions: ['browser'],
      mainFields: ['module', 'main'],
      target: 'node20.19',
      minify: true,
      legalComments: 'inline',
      plugins: [onlyPackage(path, carried)],
    });
  }
}
