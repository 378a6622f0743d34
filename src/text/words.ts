/** The words of a name: `outer contour` for `outerContour`. */
export function wordsOf(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** The same with a capital letter: `Outer contour`. */
export function headingWords(name: string): string {
  return capitalised(wordsOf(name));
}

/** A sentence or heading with a capital letter at its beginning. */
export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A number with its word: `1 error`, `2 errors`; with a plural that ends otherwise where that is given. */
export function counted(count: number, word: string, plural = `${word}s`): string {
  return `${count} ${count === 1 ? word : plural}`;
}

/** Words in a row: `one, two and three`. */
export function enumerated(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
