import { distance } from 'fastest-levenshtein';
import { wordsOf } from '../../text/words.ts';
import { profilePage, rulePage } from '../address.ts';
import type { SearchData } from '../data/search-data.ts';

/** Something that can be found by its words. */
export interface SearchEntry {
  readonly kind: string;
  readonly name: string;
  /** Its page from the root of the site. */
  readonly page: string;
  /** What else it is known by: id, maker, polymer, words of a quirk. */
  readonly words: string;
}

/** The rows of the data that are searched, as the search takes them. */
export function searchEntriesOf({ kinds, rows }: SearchData): SearchEntry[] {
  return rows.flatMap(([place, id, name, words]) => {
    const kind = kinds[place];
    if (kind === undefined) return [];
    const page = kind === 'rule' ? rulePage(id) : profilePage(kind, id);
    return [{ kind: wordsOf(kind), name: name === '' ? id : name, page, words: `${id} ${words}` }];
  });
}

/** Entries by the words in them. */
export interface SearchIndex {
  readonly entries: readonly SearchEntry[];
  readonly places: ReadonlyMap<string, readonly number[]>;
}

export function searchIndex(entries: readonly SearchEntry[]): SearchIndex {
  const places = new Map<string, number[]>();
  for (const [place, { name, words }] of entries.entries()) {
    for (const word of new Set(wordsIn(`${name} ${words}`))) {
      const known = places.get(word);
      if (known === undefined) places.set(word, [place]);
      else known.push(place);
    }
  }
  return { entries, places };
}

/** How well a word of the index answers one that was typed. */
const worth = { same: 4, beginning: 3, within: 2, slip: 1 } as const;

/**
 * Entries that hold every word that was typed, the best first: as it is, as the beginning or a part of a word, or with a
 * slip of the keys. Nothing was typed: nothing is found.
 */
export function searchEntries({ entries, places }: SearchIndex, typed: string, most = 12): SearchEntry[] {
  const asked = wordsIn(typed);
  if (asked.length === 0) return [];
  const scores = asked.map((word) => scoresOf(word, places));
  const [first = new Map<number, number>(), ...others] = scores;
  const found = [...first].flatMap(([place, score]) => {
    const rest = others.map((each) => each.get(place));
    const entry = entries[place];
    if (entry === undefined || rest.some((each) => each === undefined)) return [];
    return [{ entry, score: rest.reduce<number>((sum, each) => sum + (each ?? 0), score), place }];
  });
  return found
    .toSorted((one, other) => other.score - one.score || one.place - other.place)
    .slice(0, most)
    .map(({ entry }) => entry);
}

function scoresOf(asked: string, places: SearchIndex['places']): Map<number, number> {
  const scores = new Map<number, number>();
  for (const [word, found] of places) {
    const score = scoreOf(asked, word);
    if (score === 0) continue;
    for (const place of found) scores.set(place, Math.max(score, scores.get(place) ?? 0));
  }
  return scores;
}

function scoreOf(asked: string, word: string): number {
  if (word === asked) return worth.same;
  if (word.startsWith(asked)) return worth.beginning;
  if (asked.length > 2 && word.includes(asked)) return worth.within;
  const slips = slipsAllowed(asked);
  if (slips === 0 || word.length < asked.length - slips) return 0;
  // A word that is still being typed has its end to come.
  const sameLength = word.slice(0, asked.length);
  return Math.min(distance(asked, sameLength), distance(asked, word)) <= slips ? worth.slip : 0;
}

/** Two in a long word; none in a short one, which would turn it into another. */
function slipsAllowed({ length }: string): number {
  return length < 4 ? 0 : length < 7 ? 1 : 2;
}

function wordsIn(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
}
