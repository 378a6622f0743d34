import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sameValue } from '../../src/registry/same-value.ts';

const value = fc.jsonValue({ maxDepth: 3 });

test('two values are the same where Node says so', () => {
  fc.assert(fc.property(value, value, (a, b) => sameValue(a, b) === isDeepStrictEqual(a, b)));
  fc.assert(fc.property(value, (a) => sameValue(a, structuredClone(a))));
});

test.each<[unknown, unknown, boolean]>([
  [{ a: 1, b: [1, 2] }, { b: [1, 2], a: 1 }, true],
  [{ a: Number.NaN }, { a: Number.NaN }, true],
  [{ a: undefined }, { b: undefined }, false],
  [[1, 2], [2, 1], false],
  [[], {}, false],
  [['a'], { 0: 'a' }, false],
  [null, {}, false],
  [0, '0', false],
])('%j and %j: %s', (a, b, same) => {
  expect(sameValue(a, b)).toBe(same);
  expect(sameValue(b, a)).toBe(same);
});
