import type { Section } from '../text/document.ts';
import { formatMarkdownBlock } from '../text/format-markdown.ts';

/** How much of a list of sections a comment has room for. */
export interface Room {
  readonly sections: number;
  /** Longest text, in characters of Markdown. */
  readonly length: number;
}

/** The first sections, as many as there may be and as fit into a length, and how many are left out. */
export function fittingSections(
  all: readonly Section[],
  room: Room,
): { readonly shown: readonly Section[]; readonly hidden: number } {
  let length = 0;
  const shown = all.slice(0, room.sections).filter((each) => {
    if (Number.isFinite(room.length))
      length += formatMarkdownBlock(each, { level: 1, aligned: false }).length;
    return length <= room.length;
  });
  return { shown, hidden: all.length - shown.length };
}
