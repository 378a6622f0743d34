import { expect, test } from 'vitest';
import { sourceText } from '../../src/registry/source-text.ts';

const digest = (raw: string) => sourceText('a', 'a', raw).digest;

test('the text loses its byte-order mark and keeps its line ends', () => {
  expect(sourceText('p/a.yaml', 'a.yaml', '\uFEFFa: 1\r\n')).toMatchObject({
    path: 'p/a.yaml',
    relativePath: 'a.yaml',
    text: 'a: 1\r\n',
  });
});

// FIPS 180-4, SHA-256 of "abc": the example of section B.1 of FIPS 180-2, from memory.
test('the digest is SHA-256 of the UTF-8 bytes', () => {
  expect(digest('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});

test('the digest does not depend on line ends or a byte-order mark, but on everything else', () => {
  expect(digest('\uFEFFa: 1\r\nb: 2\r\n')).toBe(digest('a: 1\nb: 2\n'));
  expect(digest('a: 1\nb: 2')).not.toBe(digest('a: 1\nb: 2\n'));
  expect(digest('a: 1\rb')).not.toBe(digest('a: 1\nb'));
  expect(digest('\uFEFF\uFEFFa')).not.toBe(digest('a'));
});
