import fc from 'fast-check';
import { expect, test } from 'vitest';
import { prune } from '../../../src/registry/form/prune.ts';
import { toPointer } from '../../../src/registry/shape.ts';

const content = (): readonly string[] => [];

test('takes out the places named and leaves the original alone', () => {
  const original = { a: 1, b: { c: 2, d: 3 } };
  expect(prune(original, ['/a', '/b/c'], content)?.rest).toEqual({ b: { d: 3 } });
  expect(original).toEqual({ a: 1, b: { c: 2, d: 3 } });
});

test('items of a list are named by their first positions, in any order, twice or not', () => {
  for (const pointers of [
    ['/0', '/2', '/10'],
    ['/10', '/0', '/2', '/0'],
  ]) {
    expect(prune([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10], pointers, content)?.rest).toEqual([
      1, 3, 4, 5, 6, 7, 8, 9,
    ]);
  }
});

test('a place inside of another that goes too', () => {
  expect(prune({ a: [{ b: 1 }, { b: 2 }] }, ['/a/0', '/a/0/b', '/a/1/b'], content)?.rest).toEqual({
    a: [{}],
  });
});

test('goes on until nothing is wrong', () => {
  const emptyList = (rest: unknown) => ((rest as { a?: unknown[] }).a?.length === 0 ? ['/a'] : []);
  expect(prune({ a: [1], b: 2 }, ['/a/0'], emptyList)?.rest).toEqual({ b: 2 });
});

test('is null when the whole had to go, at once or in the end', () => {
  expect(prune({ a: 1 }, [''], content)).toBeNull();
  expect(
    prune({ a: 1 }, ['/a'], (rest) => (Object.keys(rest as object).length === 0 ? [''] : [])),
  ).toBeNull();
});

test('keys with signs of a pointer, and __proto__, are keys', () => {
  const value: unknown = JSON.parse('{"a/b": 1, "c~d": 2, "__proto__": 3, "e": 4}');
  expect(prune(value, ['/a~1b', '/c~0d', '/__proto__'], content)?.rest).toEqual({ e: 4 });
  expect(Object.getPrototypeOf({})).toBe(Object.prototype);
});

test('of a list, exactly the items that are not named stay', () => {
  fc.assert(
    fc.property(fc.array(fc.boolean()), (gone) => {
      const items = gone.map((_, index) => index);
      const pointers = items.filter((index) => gone[index]).map((index) => toPointer([index]));
      expect(prune(items, pointers, content)?.rest).toEqual(items.filter((index) => !gone[index]));
    }),
  );
});

test('tells where each place of the rest stood', () => {
  const pruned = prune(
    { a: [{ b: [0, 1, 2, 3] }, 'x', { b: [4, 5, 6, 7] }] },
    ['/a/1', '/a/2/b/0', '/a/2/b/2'],
    content,
  );
  expect(pruned?.rest).toEqual({ a: [{ b: [0, 1, 2, 3] }, { b: [5, 7] }] });
  expect(pruned?.originalPath(['a', 0, 'b', 3])).toEqual(['a', 0, 'b', 3]);
  expect(pruned?.originalPath(['a', 1, 'b', 1])).toEqual(['a', 2, 'b', 3]);
  expect(pruned?.originalPath(['a', 1, 'no', 7])).toEqual(['a', 2, 'no', 7]);
});

test('of a list pruned in several rounds, every item that stays knows its first position', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(3)), (rounds) => {
      const list = rounds.map((round, index) => ({ round, index }));
      let round = 0;
      const inRound = (rest: unknown) =>
        (rest as typeof list).flatMap((item, index) => (item.round === round ? [toPointer([index])] : []));
      const pruned = prune(list, inRound(list), (rest) => {
        round = Math.min(round + 1, 2);
        return inRound(rest);
      });
      for (const [index, item] of ((pruned?.rest ?? []) as typeof list).entries()) {
        expect(pruned?.originalPath([index])).toEqual([item.index]);
      }
    }),
  );
});
