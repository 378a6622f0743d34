import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';

interface Entrance {
  readonly types: { readonly require: string; readonly default: string };
  readonly default: string;
}

/** The entrances of a package in a folder, each a module by its path from there. */
function entrancesOf(folder: string): Entrance[] {
  const { exports } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    exports: Readonly<Record<string, string | Entrance>>;
  };
  return Object.values(exports).filter((entrance) => typeof entrance !== 'string');
}

/** `core` for `./dist/core.js`: the entrances of the package as modules of its build. */
export function builtEntrances(folder: string): string[] {
  return entrancesOf(folder).map((entrance) => entrance.default.replace('./dist/', '').replace(/\.js$/, ''));
}

/**
 * Writes the types that a CommonJS project reads of each entrance of the package in a folder: the same, of the same modules. Node
 * requires ES modules in every version that the package runs on, but a compiler older than TypeScript 5.8 believes so only of
 * what says by its name that it is CommonJS.
 */
export async function writeCommonJsTypes(folder: string): Promise<void> {
  for (const entrance of entrancesOf(folder)) {
    const module: object = await import(pathToFileURL(join(folder, entrance.default)).href);
    const names = Object.keys(module).sort();
    writeFileSync(
      join(folder, entrance.types.require),
      commonJsTypes(`./${basename(entrance.default)}`, names),
    );
  }
}

/** Types of a module for `require`: its types as they are, and each of its values by name. */
function commonJsTypes(module: string, values: readonly string[]): string {
  const mode = "with { 'resolution-mode': 'import' }";
  return [
    `import type * as esm from '${module}' ${mode};`,
    `export type * from '${module}' ${mode};`,
    ...values.map((name) => `export declare const ${name}: typeof esm.${name};`),
    '',
  ].join('\n');
}
