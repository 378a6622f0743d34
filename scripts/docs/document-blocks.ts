/** A fenced block of a Markdown document. */
export interface Block {
  /** First word after the fence: `sh`, `text`, `yaml`. */
  readonly language: string;
  /** What follows it on the line of the fence: the path of the file that the block shows, for instance. */
  readonly words: readonly string[];
  readonly text: string;
  /** Line of the opening fence, from 1. */
  readonly line: number;
  /** Where `text` stands in the document. */
  readonly start: number;
  readonly end: number;
}

/** The fenced blocks of a document in their order; fences are three backticks at the beginning of a line. */
export function blocksOf(markdown: string): Block[] {
  return [...markdown.matchAll(/^```(\S+)([^\n]*)\n(.*?)^```$/gms)].map((match) => {
    const [, language = '', rest = '', text = ''] = match;
    const start = match.index + '```'.length + language.length + rest.length + '\n'.length;
    return {
      language,
      words: rest.split(' ').filter((word) => word !== ''),
      text,
      line: markdown.slice(0, match.index).split('\n').length,
      start,
      end: start + text.length,
    };
  });
}
