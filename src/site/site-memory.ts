import type { ResultMemory } from '../registry/result-memory.ts';
import { sampleOf } from '../registry/result-memory.ts';
import { sha256Of } from '../text/sha256.ts';
import type { KeptFile, SiteEntry, SiteFile } from './site-file.ts';

/** A part of the catalogue that is made by itself: what it is called, all that goes into it, and how it is made. */
interface SiteUnit<Value> {
  readonly name: string;
  readonly inputs: unknown;
  readonly make: () => Generator<SiteFile, Value>;
}

/** What earlier runs have made of units, as far as it still stands. Values are what JSON can write. */
export interface SiteMemory {
  /** The files of a unit, those that stand by their digests alone, and its value. */
  readonly recall: <Value>(unit: SiteUnit<Value>) => Generator<SiteEntry, Value>;
}

/** Makes everything. */
export const noSiteMemory: SiteMemory = { recall: ({ make }) => make() };

/** What was made of a unit: its inputs by their digest, its files by theirs. */
interface Made {
  readonly key: string;
  readonly value: unknown;
  readonly files: readonly KeptFile[];
}

interface Recalled {
  readonly unit: SiteUnit<unknown>;
  readonly made: Made;
}

/** A memory that looks at what stands in a folder, and can be asked whether what it recalled was right. */
export interface FolderSiteMemory extends SiteMemory {
  /** Makes a few of the recalled units again, others each day; names those that differ. */
  readonly differing: (today: string) => string[];
  /** Keeps what this run has made and recalled for the next one, and forgets the rest. */
  readonly keep: () => void;
}

/** Units are kept in so many parts, so that a run reads and writes what it needs. */
const parts = 64;

/** `folder` tells the catalogues of one machine apart; `stands` says whether a file of the folder has that digest. */
export function folderSiteMemory(
  results: Pick<ResultMemory, 'lookUp' | 'learn'>,
  folder: string,
  stands: (file: KeptFile) => boolean,
): FolderSiteMemory {
  const known = new Map<string, Made>();
  const now = new Map<string, Made>();
  const recalled: Recalled[] = [];
  const asked = (part: number) => ({ kind: 'site', name: folder, inputs: [folder, part] });
  for (let part = 0; part < parts; part++)
    for (const [name, made] of results.lookUp<[string, Made][]>(asked(part)) ?? []) known.set(name, made);
  return {
    *recall<Value>(unit: SiteUnit<Value>): Generator<SiteEntry, Value> {
      const key = keyOf(unit);
      const made = known.get(unit.name);
      if (made?.key === key && made.files.every(stands)) {
        now.set(unit.name, made);
        recalled.push({ unit, made });
        yield* made.files;
        // What was kept is what the same program made of the same inputs.
        return made.value as Value;
      }
      const files: KeptFile[] = [];
      const making = unit.make();
      for (let next = making.next(); ; next = making.next()) {
        if (next.done === true) {
          now.set(unit.name, { key, value: next.value, files });
          return next.value;
        }
        files.push({ path: next.value.path, digest: sha256Of(next.value.text) });
        yield next.value;
      }
    },
    differing: (today) => {
      const wrong = sampleOf(recalled, ({ made: { key } }) => key, today).filter(isWrong);
      for (const { unit } of wrong) now.delete(unit.name);
      return wrong.map(({ unit }) => unit.name);
    },
    keep: () => {
      const byPart = Array.from({ length: parts }, (): [string, Made][] => []);
      for (const [name, made] of now) byPart[partOf(name)]?.push([name, made]);
      for (const [part, listed] of byPart.entries()) {
        const text = JSON.stringify(listed);
        if (text !== JSON.stringify(results.lookUp(asked(part)) ?? [])) results.learn(asked(part), text);
      }
    },
  };
}

function keyOf({ name, inputs }: SiteUnit<unknown>): string {
  return sha256Of(JSON.stringify([name, inputs]));
}

function partOf(name: string): number {
  return Number.parseInt(sha256Of(name).slice(0, 4), 16) % parts;
}

/** Whether a unit that is made again gives other files or another value. */
function isWrong({ unit, made }: Recalled): boolean {
  const files: KeptFile[] = [];
  const making = unit.make();
  let next = making.next();
  for (; next.done !== true; next = making.next())
    files.push({ path: next.value.path, digest: sha256Of(next.value.text) });
  return JSON.stringify([made.value, made.files]) !== JSON.stringify([next.value, files]);
}
