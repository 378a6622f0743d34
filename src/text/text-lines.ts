import { piecesOf, type Style, type Text } from './inline.ts';
import { oneLine } from './one-line.ts';
import { type Word, wrapWords } from './wrap-words.ts';

/** In which colours, and how wide, a part of a document is printed. */
export interface TextPrinter {
  readonly styles: Readonly<Record<Style, (text: string) => string>>;
  readonly width: number;
}

/** A text on as many lines as its width asks for. */
export function textLines(text: Text, { styles, width }: TextPrinter): string[] {
  return wrapWords(wordsOf(text, styles), width);
}

/** A text on one line. */
export function textLine(text: Text, { styles }: TextPrinter): string {
  return wordsOf(text, styles)
    .map(({ text: word, afterSpace }, index) => (afterSpace && index > 0 ? ` ${word}` : word))
    .join('');
}

function wordsOf(text: Text, styles: TextPrinter['styles']): Word[] {
  let afterSpace = false;
  return piecesOf(text).flatMap(({ text: written, style }) => {
    const line = oneLine(written);
    if (style === 'code') return [word(styles.code(line))];
    return line.split(' ').flatMap((part, index) => {
      if (index > 0) afterSpace = true;
      return part === '' ? [] : [word(styles[style](part))];
    });
  });

  function word(printed: string): Word {
    const made = { text: printed, afterSpace };
    afterSpace = false;
    return made;
  }
}
