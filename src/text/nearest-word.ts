import { distance } from 'fastest-levenshtein';

/** The word that was probably meant: at most a third of its letters away, or null. */
export function nearestWord(written: string, words: readonly string[]): string | null {
  // Longer texts are no misspelled word, and the distance takes quadratic time.
  if (written.length > 60) return null;
  let best: { word: string; steps: number } | null = null;
  const wanted = written.toLowerCase();
  const most = words.reduce((steps, word) => Math.max(steps, allowedSteps(word)), 0);
  for (const word of words.length > manyWords ? neighboursOf(written, words) : words) {
    // So many letters are added or left out at least.
    if (Math.abs(word.length - written.length) >= (best?.steps ?? most + 1)) continue;
    const steps = stepsBetween(wanted, word.toLowerCase());
    if (best === null || steps < best.steps) best = { word, steps };
  }
  return best !== null && best.steps <= allowedSteps(best.word) ? best.word : null;
}

function allowedSteps(word: string): number {
  return Math.max(1, Math.floor(word.length / 3));
}

/** Letters added, left out or replaced; two neighbours that changed places, and nothing else, are one step. */
function stepsBetween(one: string, other: string): number {
  return isOneSwap(one, other) ? 1 : distance(one, other);
}

function isOneSwap(one: string, other: string): boolean {
  if (one.length !== other.length) return false;
  let at = 0;
  while (at < one.length && one[at] === other[at]) at++;
  return (
    at < one.length &&
    one[at] === other[at + 1] &&
    one[at + 1] === other[at] &&
    one.slice(at + 2) === other.slice(at + 2)
  );
}

/** Of so many words only those are looked at that begin or end alike: a large registry has thousands of ids. */
const manyWords = 500;
/** How many are looked at before and behind the place where a word would stand. */
const reach = 60;

const sortedWords = new WeakMap<readonly string[], readonly [fromStart: string[], fromEnd: string[]]>();

/** The words beside which a word would stand in a list that is sorted by their beginnings, and in one by their ends. */
function neighboursOf(written: string, words: readonly string[]): readonly string[] {
  const known = sortedWords.get(words);
  const [fromStart, fromEnd] = known ?? [[...words].sort(), words.map(reversed).sort()];
  if (known === undefined) sortedWords.set(words, [fromStart, fromEnd]);
  return [...around(fromStart, written), ...around(fromEnd, reversed(written)).map(reversed)];
}

function reversed(word: string): string {
  return [...word].reverse().join('');
}

function around(sorted: readonly string[], word: string): readonly string[] {
  let low = 0;
  for (let high = sorted.length; low < high; ) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] ?? '') < word) low = middle + 1;
    else high = middle;
  }
  return sorted.slice(Math.max(0, low - reach), low + reach);
}
