/** What differs between two texts: the lines from the first that differs to the last, `-` as before, `+` as after. */
export function changedLines(before: string, after: string): string[] {
  const old = before.split(/\r?\n/);
  const now = after.split(/\r?\n/);
  const shorter = Math.min(old.length, now.length);
  let start = 0;
  while (start < shorter && old[start] === now[start]) start++;
  let end = 0;
  while (end < shorter - start && old.at(-1 - end) === now.at(-1 - end)) end++;
  return [
    ...old.slice(start, old.length - end).map((line) => `-${line}`),
    ...now.slice(start, now.length - end).map((line) => `+${line}`),
  ];
}
