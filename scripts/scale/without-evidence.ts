import { isMap, isSeq, parseDocument, type YAMLMap } from 'yaml';

/**
 * A registry without readings: no trials, and no statements that rest on one. Yields paths from the root with their texts.
 */
export function* withoutEvidence(
  files: Iterable<readonly [path: string, text: string]>,
): Generator<readonly [path: string, text: string]> {
  for (const [path, text] of files) {
    if (path.startsWith('trials/')) continue;
    yield [path, /\bevidence:/.test(text) ? withoutStatements(text) : text];
  }
}

function withoutStatements(text: string): string {
  const document = parseDocument(text);
  if (isMap(document.contents)) cut(document.contents);
  return document.toString({ lineWidth: 0 });
}

/** Takes away the list items that rest on a trial, and the lists that are empty then. */
function cut(map: YAMLMap): void {
  for (const pair of [...map.items]) {
    const { value } = pair;
    if (isMap(value)) cut(value);
    if (!isSeq(value)) continue;
    for (const item of value.items) if (isMap(item)) cut(item);
    value.items = value.items.filter((item) => !(isMap(item) && item.has('evidence')));
    if (value.items.length === 0) map.delete(pair.key);
  }
}
