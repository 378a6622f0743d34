import fc from 'fast-check';
import { expect, test } from 'vitest';
import { prune } from '../../src/registry/prune.ts';
import { toPointer } from '../../src/registry/shape.ts';

const content = (): readonly string[] => [];

test('takes out the places named and leaves the original alone', () => {
  const original = { a: 1, b: { c: 2, d: 3 } };
  expect(prune(original, ['/a', '/b/c'], content)).toEqual({ b: { d: 3 } });
  expect(original).toEqual({ a: 1, b: { c: 2, d: 3 } });
});

test('items of a list are named by their first positions, in any order, twice or not', () => {
  for (const pointers of [
    ['/0', '/2', '/10'],
    ['/10', '/0', '/2', '/0'],
  ]) {
    expect(prune([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], pointers, content)).toEqual([1, 3, 4, 5, 6, 7, 8, 9]);
  }
});

test('a place inside of another that goes too', () => {
  expect(prune({ a: [{ b: 1 }, { b: 2 }] }, ['/a/0', '/a/0/b', '/a/1/b'], content)).toEqual({ a: [{}] });
});

test('goes on until nothing is wrong', () => {
  const emptyList = (rest: unknown) => ((rest as { a?: unknown[] }).a?.length === 0 ? ['/a'] : []);
  expect(prune({ a: [1], b: 2 }, ['/a/0'], emptyList)).toEqual({ b: 2 });
});

test('is undefined when the whole had to go, at once or in the end', () => {
  expect(prune({ a: 1 }, [''], content)).toBeUndefined();
  expect(
    prune({ a: 1 }, ['/a'], (rest) => (Object.keys(rest as object).length === 0 ? [''] : [])),
  ).toBeUndefined();
});

test('keys with signs of a pointer, and __proto__, are keys', () => {
  const value: unknown = JSON.parse('{"a/b": 1, "c~d": 2, "__proto__": 3, "e": 4}');
  expect(prune(value, ['/a~1b', '/c~0d', '/__proto__'], content)).toEqual({ e: 4 });
  expect(Object.getPrototypeOf({})).toBe(Object.prototype);
});

test('of a list, exactly the items that are not named stay', () => {
  fc.assert(
    fc.property(fc.array(fc.boolean()), (gone) => {
      const items = gone.map((_, index) => index);
      const pointers = items.filter((index) => gone[index]).map((index) => toPointer([index]));
      expect(prune(items, pointers, content)).toEqual(items.filter((index) => !gone[index]));
    }),
  );
});
