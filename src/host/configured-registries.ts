import { existsSync } from 'node:fs';
import { dirname, isAbsolute, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isObject } from '../registry/shape.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { templateProblem, type WebEditor } from '../site/bench/web-editor.ts';
import { quote } from '../text/quote.ts';
import { readPlainFile } from './read-plain-file.ts';

const example = '"meltbounds": {"registries": ["meltbounds", "profiles"]}';

/** Bytes. */
const largestManifest = 1 << 20;

/** What is wrong with what package.json says of the registries and their repository. */
export type ConfigProblem = Problem<
  'unreadableConfig' | 'noRegistriesNamed' | 'outsideFolder' | 'badWebEditor'
>;

/**
 * The registries that package.json in a folder names under `meltbounds`, the team's own last; null where it names
 * none. Problems: a file that is no JSON, names that are no list of words, or a path that leads out of the folder.
 */
export function configuredRegistries(cwd: string): Result<readonly string[] | null, ConfigProblem> {
  const path = join(cwd, 'package.json');
  if (!existsSync(path)) return success(null);
  const config = readConfig(path);
  if (!config.ok) return config;
  if (config.value === undefined) return success(null);
  const { registries, webEditor } = isObject(config.value)
    ? config.value
    : { registries: undefined, webEditor: undefined };
  // Who names a web editor need not name registries.
  if (registries === undefined && webEditor !== undefined) return success(null);
  if (!Array.isArray(registries) || registries.length === 0 || !registries.every(isName)) {
    return refusal(
      'noRegistriesNamed',
      'package.json: "meltbounds" names no registries',
      `Write it like this: ${example}`,
    );
  }
  const outside = registries.find((name) => isAbsolute(name) || name.split(/[\\/]/).includes('..'));
  if (outside === undefined) return success(registries);
  return refusal(
    'outsideFolder',
    `package.json: the registry "${outside}" lies outside of this folder`,
    'Name a folder inside it, or an installed package.',
  );
}

/**
 * The web editor of the code host that package.json names under `meltbounds`; null where it names none. Problems: a file
 * that is no JSON, or addresses that are no templates of https addresses.
 */
export function configuredEditor(cwd: string): Result<WebEditor | null, ConfigProblem> {
  const path = join(cwd, 'package.json');
  if (!existsSync(path)) return success(null);
  const config = readConfig(path);
  if (!config.ok) return config;
  const named = isObject(config.value) ? config.value.webEditor : undefined;
  if (named === undefined) return success(null);
  const { newFile, editFile, ...others } = isObject(named)
    ? named
    : { newFile: undefined, editFile: undefined };
  const [stray] = Object.keys(others);
  if (stray !== undefined) return badEditor(`has a key "${quote(stray)}"`);
  if (typeof newFile !== 'string') return badEditor('has no text under newFile');
  if (typeof editFile !== 'string') return badEditor('has no text under editFile');
  for (const [key, template] of Object.entries({ newFile, editFile })) {
    const problem = templateProblem(template);
    if (problem !== null) return badEditor(`${key} ${problem}`);
  }
  return success({ newFile, editFile });
}

const editorExample =
  '"webEditor": {"newFile": "https://code.example/team/registry/new/main?filename={path}&value={text}", "editFile": "https://code.example/team/registry/edit/main/{path}"}';

function badEditor(what: string) {
  return refusal(
    'badWebEditor',
    `package.json: "webEditor" of "meltbounds" ${what}`,
    `Write it like this: ${editorExample}`,
  );
}

function readConfig(path: string): Result<unknown, ConfigProblem> {
  try {
    const read = readPlainFile(path, largestManifest);
    if (!read.ok) return unreadableConfig('is no plain file of a usual size');
    const manifest: unknown = JSON.parse(read.value.toString('utf8'));
    return success(isObject(manifest) ? manifest.meltbounds : undefined);
  } catch {
    return unreadableConfig('cannot be read as JSON');
  }
}

function unreadableConfig(what: string) {
  return refusal('unreadableConfig', `package.json ${what}`, 'Fix it, or name registries with --registry.');
}

function isName(value: unknown): value is string {
  return typeof value === 'string' && value !== '';
}

const ownName = 'meltbounds';
const ownPackage = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Folder of an installed package, looked for as Node does: in `node_modules` here and in the folders above. Our own is
 * found in any case, since it is running.
 */
export function packageFolder(name: string, cwd: string): string | null {
  if (!/^(?:@[a-z0-9][a-z0-9._-]*\/)?[a-z0-9][a-z0-9._-]*$/.test(name)) return null;
  for (let folder = cwd; ; folder = dirname(folder)) {
    const place = join(folder, 'node_modules', name);
    if (existsSync(place)) return place;
    if (folder === dirname(folder)) return name === ownName ? ownPackage : null;
  }
}
