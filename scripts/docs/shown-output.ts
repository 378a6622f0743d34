const leftOut = '…';

/**
 * What a block of a document should show today: all that its commands print, or, where a line `…` stands for lines left
 * out, as many lines before and after it as the block has now.
 */
export function refreshed(shown: string, printed: string): string {
  const lines = linesOf(shown);
  const now = linesOf(printed);
  const gap = lines.indexOf(leftOut);
  if (gap === -1) return joined(now);
  const tail = lines.length - gap - 1;
  if (now.length <= gap + tail) return joined(now);
  return joined([...now.slice(0, gap), leftOut, ...(tail === 0 ? [] : now.slice(-tail))]);
}

function linesOf(text: string): string[] {
  return text
    .trimEnd()
    .split('\n')
    .map((line) => line.trimEnd());
}

function joined(lines: readonly string[]): string {
  return `${lines.join('\n')}\n`;
}
