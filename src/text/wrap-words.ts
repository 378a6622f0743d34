import { columnsOf } from './columns.ts';

/** A word as it is printed, marks of its style included, and whether a space stands before it. */
export interface Word {
  readonly text: string;
  readonly afterSpace: boolean;
}

/**
 * Words set in lines of at most `width` columns. A number stays with the word behind it, which mostly is its unit; a
 * word that is too long has a line to itself.
 */
export function wrapWords(words: readonly Word[], width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const group of unbroken(words)) {
    const longer = line === '' ? group : `${line} ${group}`;
    if (line !== '' && columnsOf(longer) > width) {
      lines.push(line);
      line = group;
    } else {
      line = longer;
    }
  }
  return [...lines, line];
}

/** Words that no line may part in one text: those without a space between them, a number and the word behind it. */
function unbroken(words: readonly Word[]): string[] {
  const groups: string[] = [];
  let isAfterNumber = false;
  for (const { text, afterSpace } of words) {
    const last = groups.at(-1);
    if (last === undefined || (afterSpace && !isAfterNumber)) groups.push(text);
    else groups[groups.length - 1] = `${last}${afterSpace ? ' ' : ''}${text}`;
    isAfterNumber = /^[(>]?[-+]?\d[\d.–]*$/.test(text);
  }
  return groups;
}
