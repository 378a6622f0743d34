/** The text of a schema with other values in the list of a property; its line breaks and all else stay. */
export function withList(text: string, property: string, values: readonly string[]): string {
  const list = new RegExp(`("${property}": \\{\\s*"enum": \\[)(\\s*)[^\\]]*?(\\s*\\])`);
  if (!list.test(text)) throw new Error(`the schema has no list of values of "${property}"`);
  return text.replace(
    list,
    (_, start: string, indent: string, end: string) =>
      start + values.map((value) => `${indent}${JSON.stringify(value)}`).join(',') + end,
  );
}
