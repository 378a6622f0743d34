import { distance } from 'fastest-levenshtein';

/** The word that was probably meant: at most a third of its letters away, or null. */
export function nearestWord(written: string, words: readonly string[]): string | null {
  // Longer texts are no misspelled word, and the distance takes quadratic time.
  if (written.length > 60) return null;
  let best: { word: string; steps: number } | null = null;
  for (const word of words) {
    const steps = stepsBetween(written.toLowerCase(), word.toLowerCase());
    if (best === null || steps < best.steps) best = { word, steps };
  }
  return best !== null && best.steps <= Math.max(1, Math.floor(best.word.length / 3)) ? best.word : null;
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
