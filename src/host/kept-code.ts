import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { Script } from 'node:vm';
import { tidyFolders } from './writing/leftovers.ts';
import { keepFile } from './writing/put-file.ts';

interface LoadedPart {
  /** Of its file, without the ending. */
  readonly name: string;
  readonly script: Script;
  /** Size, in bytes, of what was kept of it; 0 where nothing fitted. */
  readonly size: number;
}

/** By how much more there must be to be worth writing again. */
const muchMore = 1.1;
/** What a run that is so many times as long as any before may know more; to find out takes some hundredths of it. */
const muchLonger = 1.3;

/**
 * Loads the parts of the built program, CommonJS modules of few large files. To read and translate a megabyte of them takes
 * a tenth of a short run, so what the engine has made of them is kept in a folder, from which the next run goes on. The
 * engine refuses what another version, or other flags, have made; of which program it is, the folder's name must say.
 */
export class KeptCode {
  readonly #folder: string | null;
  readonly #parts: LoadedPart[] = [];
  readonly #modules = new Map<string, { exports: unknown }>();

  /** `folder` is where code is kept; null to keep none. */
  constructor(folder: string | null) {
    this.#folder = folder;
  }

  /** Runs a module, once, with all that it asks for, and gives what it exports. */
  load(file: string): unknown {
    const known = this.#modules.get(file);
    if (known !== undefined) return known.exports;
    const module = { exports: {} as unknown };
    this.#modules.set(file, module);
    const part = this.#compile(file);
    this.#parts.push(part);
    const folder = dirname(file);
    const ofNode = createRequire(file);
    const require = (id: string): unknown => (id.startsWith('.') ? this.load(join(folder, id)) : ofNode(id));
    part.script.runInThisContext()(module.exports, require, module, file, folder);
    return module.exports;
  }

  #compile(file: string): LoadedPart {
    const name = basename(file, '.cjs');
    const kept = this.#folder === null ? null : readIfThere(this.#pathOf(name));
    const text = `(function(exports,require,module,__filename,__dirname){${readFileSync(file, 'utf8')}\n})`;
    const script = new Script(text, { filename: file, ...(kept !== null && { cachedData: kept }) });
    return { name, script, size: kept !== null && script.cachedDataRejected === false ? kept.length : 0 };
  }

  /**
   * Writes what nothing was kept of; after a run that took much longer than any before, in µs of processor time, also what
   * it knows much more of. That something cannot be written is no error: nothing but time depends on it.
   */
  keep(spent: number): void {
    if (this.#folder === null) return;
    try {
      const isLong = spent > muchLonger * this.#longest();
      const news = this.#parts.filter(({ size }) => size === 0 || isLong);
      for (const { name, script, size } of news) {
        const data = script.createCachedData();
        if (data.length > muchMore * size) keepFile(this.#pathOf(name), data, { isPrivate: false });
      }
      if (isLong) keepFile(this.#longestPath(), String(spent), { isPrivate: false });
      if (news.length > 0) tidyFolders([this.#folder]);
    } catch {
      // Read-only, full, or gone.
    }
  }

  /** What the longest run took that was looked at, in µs. */
  #longest(): number {
    const told = Number(readIfThere(this.#longestPath())?.toString());
    return Number.isNaN(told) ? 0 : told;
  }

  #longestPath(): string {
    return join(this.#folder ?? '', 'longest');
  }

  #pathOf(name: string): string {
    return join(this.#folder ?? '', `${name}.bin`);
  }
}

function readIfThere(path: string): Buffer | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}
