/** What this reader of command lines leaves to a real shell. */
const unsupported = /[|;&<>`$*?]/;

/** The commands of an `sh` block, one a line: comments dropped, lines that end in a backslash joined. */
export function commandLines(block: string): string[] {
  return block
    .replaceAll(/\\\n\s*/g, ' ')
    .split('\n')
    .map((line) => line.replace(/(?:^|\s+)#(?![^"']*["']).*$/, '').trim())
    .filter((line) => line !== '');
}

/** The words of a command line; quotes keep what is inside of them together. */
export function shellWords(line: string): string[] {
  const bare = line.replaceAll(/"[^"]*"|'[^']*'/g, '');
  if (unsupported.test(bare)) throw new Error(`"${line}" needs a shell; write one plain command a line`);
  return [...line.matchAll(/(?:"[^"]*"|'[^']*'|[^\s"'])+/g)].map(([word]) => word.replaceAll(/["']/g, ''));
}
