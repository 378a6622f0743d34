import { lstatSync, readdirSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { largestFile } from '../registry/registry-file.ts';
import type { ResultStore } from '../registry/result-store.ts';
import { fileErrorCode } from './file-error.ts';
import { removeQuietly, tidyFolders } from './writing/leftovers.ts';
import { keepFile } from './writing/put-file.ts';

/** Largest size in bytes of one of the 256 folders of a store: 256 MiB for the whole. */
const largestShelf = 1 << 20;

/** Where results are kept unless `MELTBOUNDS_CACHE` says otherwise: the user's own cache, by the custom of the system. */
export function usualResultFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform): string {
  if (env.MELTBOUNDS_CACHE) return env.MELTBOUNDS_CACHE;
  const home = homedir();
  if (env.XDG_CACHE_HOME) return join(env.XDG_CACHE_HOME, 'meltbounds');
  if (platform === 'darwin') return join(home, 'Library', 'Caches', 'meltbounds');
  if (platform === 'win32')
    return join(env.LOCALAPPDATA ?? join(home, 'AppData', 'Local'), 'meltbounds', 'Cache');
  return join(home, '.cache', 'meltbounds');
}

/**
 * A store of results in a folder, one file each. Whatever the system refuses counts as not remembered: a full disk or a
 * folder of somebody else's slows a run down and stops nothing. Each part of the folder is kept below a size; what has not
 * been written for longest goes first.
 */
export function resultFolder(folder: string): ResultStore {
  const tidied = new Set<string>();
  return {
    get: (key) => attempt(() => readEntry(placeOf(folder, key))),
    put: (key, entry) => {
      attempt(() => {
        const shelf = join(folder, key.slice(0, 2));
        keepFile(placeOf(folder, key), entry, { isPrivate: true });
        if (!tidied.has(shelf)) tidy(shelf);
        tidied.add(shelf);
      });
    },
  };
}

function placeOf(folder: string, key: string): string {
  return join(folder, key.slice(0, 2), `${key.slice(2)}.json`);
}

/** Only a plain file of a sane size is read. */
function readEntry(path: string): string | null {
  const stat = lstatSync(path);
  return stat.isFile() && stat.size <= largestFile ? readFileSync(path, 'utf8') : null;
}

function tidy(shelf: string): void {
  tidyFolders([shelf]);
  const files = readdirSync(shelf).map((name) => {
    const { size, mtimeMs } = lstatSync(join(shelf, name));
    return { name, size, mtimeMs };
  });
  let excess = files.reduce((sum, { size }) => sum + size, 0) - largestShelf;
  for (const { name, size } of files.sort((a, b) => a.mtimeMs - b.mtimeMs)) {
    if (excess <= 0) return;
    removeQuietly(join(shelf, name));
    excess -= size;
  }
}

function attempt<Value>(touch: () => Value): Value | null {
  try {
    return touch();
  } catch (error) {
    fileErrorCode(error);
    return null;
  }
}
