import { type Entry, keyOfEntry } from '../../bench/draft.ts';
import { type BenchStore, openStore } from './bench-store.ts';

/** Where what was typed is. */
export type Kept =
  | { readonly state: 'saved'; readonly at: number }
  | { readonly state: 'saving' }
  /** Not on this device, and why. */
  | { readonly state: 'memory'; readonly why: string };

/** Brings what is typed onto the disk, and goes on in memory where that cannot be done. */
export interface Keeper {
  readonly load: () => Promise<{ readonly entries: readonly Entry[]; readonly unknown: number }>;
  readonly keep: (entries: readonly Entry[]) => void;
  /** Takes note of what is on the disk already, in case that the store is lost. */
  readonly hold: (entries: readonly Entry[]) => void;
  readonly forget: (draft: string) => Promise<void>;
}

/** After so long another try is made with a store that failed, in milliseconds. */
const nextTry = 4000;

/**
 * Starts keeping. `told` hears how it stands; `written` hears of entries that are on the disk, to pass them on to other
 * pages.
 */
export function startKeeper(
  now: () => number,
  told: (kept: Kept) => void,
  written: (entries: readonly Entry[]) => void,
): Keeper {
  let store: Promise<BenchStore> | null = null;
  let isWriting = false;
  let isWaiting = false;
  /** All of the run that is open, so that a store that comes back empty gets it anew. */
  const known = new Map<string, Entry>();
  const pending = new Map<string, Entry>();
  const opened = () => {
    store ??= openStore(() => {
      for (const [place, entry] of known) pending.set(place, entry);
      failed('the browser has closed its store');
    });
    return store;
  };
  const failed = (why: string) => {
    const lost = store;
    store = null;
    void lost?.then(({ close }) => close()).catch(() => undefined);
    told({ state: 'memory', why });
    if (isWaiting) return;
    isWaiting = true;
    setTimeout(() => {
      isWaiting = false;
      void flush();
    }, nextTry);
  };
  async function flush(): Promise<void> {
    if (isWriting) return;
    isWriting = true;
    const entries = [...pending.values()];
    try {
      await (await opened()).put(entries);
      isWriting = false;
      for (const entry of entries) if (pending.get(placeOf(entry)) === entry) pending.delete(placeOf(entry));
      written(entries);
      told(pending.size === 0 ? { state: 'saved', at: now() } : { state: 'saving' });
      if (pending.size > 0) await flush();
    } catch (error) {
      isWriting = false;
      failed(reasonOf(error));
    }
  }
  return {
    load: async () => {
      try {
        return await (await opened()).load();
      } catch (error) {
        failed(reasonOf(error));
        return { entries: [], unknown: 0 };
      }
    },
    hold: (entries) => {
      for (const entry of entries) known.set(placeOf(entry), entry);
    },
    keep: (entries) => {
      for (const entry of entries) {
        known.set(placeOf(entry), entry);
        pending.set(placeOf(entry), entry);
      }
      void flush();
    },
    forget: async (draft) => {
      for (const kept of [known, pending])
        for (const [place, entry] of kept) if (entry.draft === draft) kept.delete(place);
      await (await opened()).remove(draft);
    },
  };
}

function placeOf(entry: Entry): string {
  return `${entry.draft} ${keyOfEntry(entry)}`;
}

function reasonOf(error: unknown): string {
  if (error instanceof DOMException && error.name === 'QuotaExceededError')
    return 'the store of the browser is full';
  if (typeof indexedDB === 'undefined') return 'this browser has no store, as in a private window';
  return 'the store of the browser does not answer, as in a private window';
}
