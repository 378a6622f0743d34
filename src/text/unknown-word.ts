import type { Problem } from '../result.ts';
import { nearestWord } from './nearest-word.ts';
import { quote } from './quote.ts';

/** What is said of a word that is none of those that there are. */
export function unknownWord<const Code extends string>(
  code: Code,
  what: string,
  word: string,
  known: readonly string[],
): Problem<Code> {
  return { code, message: `There is no ${what} "${quote(word)}"`, help: wordHint(word, known) };
}

/** What to do about an unknown word: take the one that is near, else by default one of those that there are. */
export function wordHint(
  word: string,
  known: readonly string[],
  otherwise = `There are: ${known.join(', ') || 'none'}.`,
): string {
  const nearest = nearestWord(word, known);
  return nearest === null ? otherwise : `Did you mean "${nearest}"?`;
}
