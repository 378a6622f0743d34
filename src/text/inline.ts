/** How a piece of a sentence is to be read. */
export type Style =
  | 'plain'
  | 'code'
  | 'strong'
  | 'emphasis'
  | 'quiet'
  | 'error'
  | 'warning'
  | 'note'
  | 'good';

/** A piece of a sentence in one style; with a target it is a link. */
export interface Piece {
  readonly text: string;
  readonly style: Style;
  /** Address that it leads to, relative or whole. */
  readonly target?: string;
}

/**
 * A sentence or a part of one. What stands between backticks in a plain text is code: printers show it as such, and
 * leave it as it is.
 */
export type Text = string | readonly (string | Piece)[];

/** The pieces of a text, code apart from the rest. */
export function piecesOf(text: Text): Piece[] {
  return typeof text === 'string'
    ? piecesOfSentence(text)
    : text.flatMap((part) => (typeof part === 'string' ? piecesOfSentence(part) : [part]));
}

/** Code between two single backticks; where there are two in a row they are text. */
const codeInBackticks = /(?<!`)`([^`]+)`(?!`)/g;

function piecesOfSentence(sentence: string): Piece[] {
  const pieces: Piece[] = [];
  let end = 0;
  for (const match of sentence.matchAll(codeInBackticks)) {
    if (match.index > end) pieces.push({ text: sentence.slice(end, match.index), style: 'plain' });
    pieces.push({ text: match[1] ?? '', style: 'code' });
    end = match.index + match[0].length;
  }
  return end < sentence.length ? [...pieces, { text: sentence.slice(end), style: 'plain' }] : pieces;
}

/** A text in bold. */
export function strong(text: string): Piece {
  return { text, style: 'strong' };
}

/** A text that says less than what stands beside it. */
export function quiet(text: string): Piece {
  return { text, style: 'quiet' };
}

/** A text in the given style. */
export function styled(style: Style, text: string): Piece {
  return { text, style };
}

/** A text that leads to an address. */
export function link(text: string, target: string): Piece {
  return { text, style: 'plain', target };
}
