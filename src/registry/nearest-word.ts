import { distance } from 'fastest-levenshtein';

/** The word that was probably meant: at most a third of its letters away, or null. */
export function nearestWord(written: string, words: readonly string[]): string | null {
  // Longer texts are no misspelled word, and the distance takes quadratic time.
  if (written.length > 60) return null;
  let best: { word: string; steps: number } | null = null;
  for (const word of words) {
    const steps = distance(written.toLowerCase(), word.toLowerCase());
    if (best === null || steps < best.steps) best = { word, steps };
  }
  return best !== null && best.steps <= Math.max(1, Math.floor(best.word.length / 3)) ? best.word : null;
}
