import {
  type Draft,
  draftOf,
  type Entry,
  type EntryContent,
  isNewer,
  keyOfEntry,
  nextRowName,
} from '../../bench/draft.ts';

/** A draft while it is typed: every change is an entry with its time. */
export interface LiveDraft {
  readonly draft: () => Draft;
  readonly entries: () => readonly Entry[];
  /** Types something: it counts at once, and can be undone. */
  readonly type: (contents: readonly EntryContent[]) => void;
  /** Brings back what the last change replaced; false where there is nothing to bring back. */
  readonly undo: () => boolean;
  /** Takes what another page has typed; returns what counts of it. */
  readonly merge: (entries: readonly Entry[]) => readonly Entry[];
  /** The name of a row that goes behind all others. */
  readonly nextRow: () => string;
}

/** Who types, and by which clock. */
export interface Typist {
  /** What tells this page from others. */
  readonly by: string;
  /** Milliseconds since 1970. */
  readonly now: () => number;
}

/** Makes a draft live; `keep` is handed every change. */
export function liveDraft(
  first: readonly Entry[],
  { by, now }: Typist,
  keep: (entries: readonly Entry[]) => void,
): LiveDraft {
  const entries = new Map<string, Entry>();
  const before: EntryContent[][] = [];
  let last = 0;
  let current: Draft | null = null;
  const take = (entry: Entry): boolean => {
    last = Math.max(last, entry.time);
    const key = keyOfEntry(entry);
    if (!isNewer(entry, entries.get(key))) return false;
    entries.set(key, entry);
    current = null;
    return true;
  };
  for (const entry of first) take(entry);
  const draft = () => {
    current ??= draftOf(entries.values());
    if (current === null) throw new Error('a draft without a head');
    return current;
  };
  const put = (contents: readonly EntryContent[]) => {
    // Clocks can be set back; what is typed later must count all the same.
    const time = Math.max(now(), last + 1);
    const { id } = draft();
    const stamped = contents.map((content): Entry => ({ draft: id, time, by, ...content }));
    for (const entry of stamped) take(entry);
    keep(stamped);
  };
  return {
    draft,
    entries: () => [...entries.values()],
    type: (contents) => {
      before.push(contents.map((content) => replacedBy(content, entries, draft())));
      put(contents);
    },
    undo: () => {
      const replaced = before.pop();
      if (replaced === undefined) return false;
      put(replaced);
      return true;
    },
    merge: (others) => others.filter(take),
    nextRow: () => nextRowName(entries.values()),
  };
}

/** What stood where something is typed. */
function replacedBy(content: EntryContent, entries: ReadonlyMap<string, Entry>, draft: Draft): EntryContent {
  const known = entries.get(keyOfEntry(content));
  if (known !== undefined) {
    const { draft: _, time: __, by: ___, ...earlier } = known;
    return earlier;
  }
  switch (content.part) {
    case 'row':
      return { ...content, value: { ...content.value, isRemoved: true } };
    case 'field':
      return { ...content, value: draft.fields.get(content.name) ?? '' };
    case 'event':
      return { part: 'event', value: null };
    case 'head':
      return content;
    default:
      return content satisfies never;
  }
}
