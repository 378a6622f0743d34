/** Where the line that an offset stands in ends, its line break included; the offset itself where a line begins there. */
export function lineEnd(text: string, offset: number): number {
  if (offset > 0 && text[offset - 1] === '\n') return offset;
  const end = text.indexOf('\n', offset);
  return end === -1 ? text.length : end + 1;
}
