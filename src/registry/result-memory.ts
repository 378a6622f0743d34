import { sha256Of } from '../text/sha256.ts';
import type { ResultStore } from './result-store.ts';

/** A result that was asked for: what it is a result of, and all that it depends on. */
export interface Question<Value> {
  /** What kind of result it is, `reduction` for instance. */
  readonly kind: string;
  /** How a message calls it, such as the id of a trial. */
  readonly name: string;
  /** All that goes in, as JSON can write it. */
  readonly inputs: unknown;
  readonly compute: () => Value;
  /** The caller makes sure of it in a cheaper way than by computing it again. */
  readonly isVouchedFor?: true;
}

/** Results of this run and of earlier ones. */
export interface ResultMemory {
  /** Names of all results of a kind that this run has asked for. */
  readonly asked: (kind: string) => readonly string[];
  /** The remembered result, or else the computed one, which is remembered from now on. Values are what JSON can write. */
  readonly recall: <Value>(question: Question<Value>) => Value;
  /** Whether a question needs no computing. */
  readonly knows: (question: Question<unknown>) => boolean;
  /** Takes over a result that was computed elsewhere in this run, as JSON. */
  readonly learn: (question: Question<unknown>, text: string) => void;
  /** Computes a result again and remembers it, whatever was remembered of it. */
  readonly renew: <Value>(question: Question<Value>) => Value;
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

/** A memory that rests on a store; `program` tells the version of the program that computes, to the last line. */
export function resultMemory(store: ResultStore, program: string): ResultMemory {
  const recalled: Recalled[] = [];
  const asked: Question<unknown>[] = [];
  const keys = new WeakMap<Question<unknown>, string>();
  const keyOf = (question: Question<unknown>) => {
    const known = keys.get(question);
    if (known !== undefined) return known;
    const key = sha256Of(JSON.stringify([program, question.kind, question.inputs]));
    keys.set(question, key);
    return key;
  };
  const learned = new Map<string, string>();
  const remember = (key: string, text: string) => {
    learned.set(key, text);
    store.put(key, entryOf(text, program));
    return text;
  };
  const renew = <Value>(question: Question<Value>): Value => {
    const text = remember(keyOf(question), JSON.stringify(question.compute()));
    return JSON.parse(text) as Value; // as it will be recalled
  };
  return {
    asked: (kind) => asked.filter((question) => question.kind === kind).map(({ name }) => name),
    knows: (question) => {
      const key = keyOf(question);
      return learned.has(key) || readEntry(store.get(key), program) !== null;
    },
    learn: (question, text) => void remember(keyOf(question), text),
    renew,
    recall: <Value>(question: Question<Value>): Value => {
      asked.push(question);
      const key = keyOf(question);
      const own = learned.get(key);
      const text = own ?? readEntry(store.get(key), program);
      if (text === null) return renew(question);
      if (own === undefined && question.isVouchedFor !== true) recalled.push({ key, text, question });
      // What was written is what the same program computed: the type is that of its question.
      return JSON.parse(text) as Value;
    },
    differing: (today) =>
      sampleOf(recalled, today).flatMap(({ key, text, question }) => {
        const again = JSON.stringify(question.compute());
        if (again === text) return [];
        remember(key, again);
        return [question.name];
      }),
  };
}

/** Which results are computed again depends on the day, so that in time each has its turn. */
function sampleOf(recalled: readonly Recalled[], today: string): Recalled[] {
  const ranked = recalled.map((each) => ({ each, rank: sha256Of(today + each.key) }));
  const count = Math.min(most, Math.ceil(recalled.length / oneIn));
  return ranked
    .sort((a, b) => (a.rank < b.rank ? -1 : 1))
    .slice(0, count)
    .map(({ each }) => each);
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
