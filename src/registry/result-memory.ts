import { sha256Of } from '../text/sha256.ts';
import type { ResultStore } from './result-store.ts';

/** A result that is asked for: what it is a result of, and all that it depends on. */
interface Asked {
  /** What kind of result it is, `reduction` for instance. */
  readonly kind: string;
  /** How a message calls it, such as the id of a trial. */
  readonly name: string;
  /** All that goes in, as JSON can write it. */
  readonly inputs: unknown;
}

/** The same with how it is computed where nobody remembers it. */
export interface Question<Value> extends Asked {
  readonly compute: () => Value;
}

/** Results of this run and of earlier ones. Values are what JSON can write. */
export interface ResultMemory {
  /** Whether results outlive this run. */
  readonly isKept: boolean;
  /** Names of all results of a kind that this run has recalled. */
  readonly recalled: (kind: string) => readonly string[];
  /** The remembered result, or else the computed one, which is remembered from now on. */
  readonly recall: <Value>(question: Question<Value>) => Value;
  /** The remembered result, or null; whether it can be trusted is for the caller to find out. */
  readonly lookUp: <Value>(asked: Asked) => Value | null;
  /** Takes over a result that was computed elsewhere in this run, as JSON. */
  readonly learn: (asked: Asked, text: string) => void;
  /** Computes a few of the recalled results again, others each day; names those that differ, and replaces them. */
  readonly differing: (today: string) => string[];
}

/** Computes everything. */
export const noMemory: Pick<ResultMemory, 'recall'> = { recall: ({ compute }) => compute() };

/** A memory that recalls each result once, for a run that goes on and asks the same again and again. */
export function recallingOnce(memory: ResultMemory): ResultMemory {
  const known = new Map<string, unknown>();
  return {
    ...memory,
    recall: <Value>(question: Question<Value>): Value => {
      const key = JSON.stringify([question.kind, question.inputs]);
      if (!known.has(key)) known.set(key, memory.recall(question));
      return known.get(key) as Value; // what was recalled of the same question
    },
    differing: (today) => {
      const wrong = memory.differing(today);
      if (wrong.length > 0) known.clear();
      return wrong;
    },
  };
}

/** Of the results that a run recalls, it computes one in so many again, and so many at most. */
const oneIn = 16;
const most = 3;

interface Recalled {
  readonly key: string;
  readonly text: string;
  readonly question: Question<unknown>;
}

/**
 * A memory that rests on a store, or, without one, on this run alone; `program` tells the version of the program that
 * computes, to the last line.
 */
export function resultMemory(store: ResultStore | null, program: string): ResultMemory {
  const names: Asked[] = [];
  const old: Recalled[] = [];
  const own = new Map<string, string>();
  const keys = new WeakMap<Asked, string>();
  const keyOf = (asked: Asked) => {
    const key = keys.get(asked) ?? sha256Of(JSON.stringify([program, asked.kind, asked.inputs]));
    keys.set(asked, key);
    return key;
  };
  const known = (key: string) => own.get(key) ?? (store === null ? null : readEntry(store.get(key), program));
  const remember = (key: string, text: string) => {
    own.set(key, text);
    store?.put(key, entryOf(text, program));
    return text;
  };
  return {
    isKept: store !== null,
    recalled: (kind) => names.filter((asked) => asked.kind === kind).map(({ name }) => name),
    // What was written is what the same program computed: the type is that of its question.
    lookUp: <Value>(asked: Asked) => {
      const text = known(keyOf(asked));
      return text === null ? null : (JSON.parse(text) as Value);
    },
    learn: (asked, text) => void remember(keyOf(asked), text),
    recall: <Value>(question: Question<Value>): Value => {
      names.push(question);
      const key = keyOf(question);
      const text = known(key);
      if (text !== null && !own.has(key)) old.push({ key, text, question });
      return JSON.parse(text ?? remember(key, JSON.stringify(question.compute()))) as Value;
    },
    differing: (today) =>
      sampleOf(old, ({ key }) => key, today).flatMap(({ key, text, question }) => {
        const again = JSON.stringify(question.compute());
        if (again === text) return [];
        remember(key, again);
        return [question.name];
      }),
  };
}

/** Which of what was recalled is computed again: it depends on the day, so that in time each has its turn. */
export function sampleOf<Item>(
  recalled: readonly Item[],
  keyOf: (item: Item) => string,
  today: string,
): Item[] {
  const ranked = recalled.map((item) => ({ item, rank: sha256Of(today + keyOf(item)) }));
  const count = Math.min(most, Math.ceil(recalled.length / oneIn));
  return ranked
    .sort((a, b) => (a.rank < b.rank ? -1 : 1))
    .slice(0, count)
    .map(({ item }) => item);
}

/** The first line holds the program and the digest of the second. */
function entryOf(text: string, program: string): string {
  return `${JSON.stringify({ program, digest: sha256Of(text) })}\n${text}\n`;
}

/** What an entry holds; null where it is missing, broken, or another program's. */
function readEntry(entry: string | null, program: string): string | null {
  const end = entry?.indexOf('\n') ?? -1;
  if (entry === null || end === -1) return null;
  const text = entry.slice(end + 1, -1);
  return entry === entryOf(text, program) ? text : null;
}
