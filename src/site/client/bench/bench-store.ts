import { type Entry, isNewer, keyOfEntry } from '../../bench/draft.ts';
import { currentEntry, draftForm } from '../../bench/draft-form.ts';

/** An entry as it is kept, with the version of its form. */
interface KeptEntry {
  readonly draft: string;
  readonly key: string;
  readonly form: number;
  readonly entry: unknown;
}

/** What the browser keeps of drafts. */
export interface BenchStore {
  /** Every entry that can be read, and how many are of a form that this page does not know. */
  readonly load: () => Promise<{ readonly entries: readonly Entry[]; readonly unknown: number }>;
  /** Resolves once the entries are on the disk; one that is older than what is kept is passed over. */
  readonly put: (entries: readonly Entry[]) => Promise<void>;
  readonly remove: (draft: string) => Promise<void>;
  readonly close: () => void;
}

const name = 'meltbounds-bench';
const table = 'entries';

/** Opens the store, which `lost` hears of when the browser closes it; rejects where there is none or it cannot be opened. */
export async function openStore(lost: () => void): Promise<BenchStore> {
  const opening = indexedDB.open(name, 1);
  opening.addEventListener('upgradeneeded', () => {
    opening.result.createObjectStore(table, { keyPath: ['draft', 'key'] });
  });
  const base = await settled(opening);
  base.addEventListener('close', lost);
  base.addEventListener('versionchange', () => {
    base.close();
    lost();
  });
  return {
    load: async () => {
      const all: KeptEntry[] = await settled(base.transaction(table).objectStore(table).getAll());
      const entries = all.flatMap((each) => currentEntry(each.form, each.entry) ?? []);
      return { entries, unknown: all.length - entries.length };
    },
    put: (entries) => putNewer(base, entries),
    remove: async (draft) => {
      const writing = base.transaction(table, 'readwrite', { durability: 'strict' });
      writing.objectStore(table).delete(IDBKeyRange.bound([draft], [draft, []]));
      await committed(writing);
    },
    close: () => base.close(),
  };
}

/** Strict durability: the browser says that it is done only when the disk has said so (W3C, Indexed Database API 3.0, 2.7). */
async function putNewer(base: IDBDatabase, entries: readonly Entry[]): Promise<void> {
  const writing = base.transaction(table, 'readwrite', { durability: 'strict' });
  const store = writing.objectStore(table);
  for (const entry of entries) {
    const key = keyOfEntry(entry);
    const asking: IDBRequest<KeptEntry | undefined> = store.get([entry.draft, key]);
    asking.addEventListener('success', () => {
      const before =
        asking.result === undefined ? null : currentEntry(asking.result.form, asking.result.entry);
      if (before !== null && !isNewer(entry, before)) return;
      store.put({ draft: entry.draft, key, form: draftForm, entry } satisfies KeptEntry);
    });
  }
  await committed(writing);
}

function settled<Value>(request: IDBRequest<Value>): Promise<Value> {
  return new Promise((resolve, reject) => {
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error));
    request.addEventListener('blocked', () => reject(new Error('another page holds the store')));
  });
}

function committed(writing: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    writing.addEventListener('complete', () => resolve());
    writing.addEventListener('abort', () => reject(writing.error));
  });
}
