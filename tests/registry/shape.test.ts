import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shapes } from '../../src/registry/generated/shapes.ts';
import { fromPointer, isObject, leavesOf, shapeAt, toPointer } from '../../src/registry/shape.ts';

describe('a JSON pointer', () => {
  // RFC 6901, section 5.
  test.each([
    ['', []],
    ['/foo', ['foo']],
    ['/foo/0', ['foo', 0]],
    ['/', ['']],
    ['/a~1b', ['a/b']],
    ['/c%d', ['c%d']],
    ['/ ', [' ']],
    ['/m~0n', ['m~n']],
  ] as const)('%j is the path %j', (pointer, path) => {
    expect(fromPointer(pointer)).toEqual(path);
    expect(toPointer(path)).toBe(pointer);
  });

  test('~01 is ~1 and no slash', () => {
    expect(fromPointer('/~01')).toEqual(['~1']);
  });

  test('digits with a leading zero are a key', () => {
    expect(fromPointer('/01/10')).toEqual(['01', 10]);
  });

  test('leads there and back', () => {
    const key = fc.string({ unit: fc.constantFrom('a', '~', '/', '0', '1', ' ', 'ü') });
    const step = fc.oneof(
      fc.nat(),
      key.filter((text) => !/^(?:0|[1-9][0-9]*)$/.test(text)),
    );
    fc.assert(
      fc.property(fc.array(step), (path) => {
        expect(fromPointer(toPointer(path))).toEqual(path);
      }),
    );
  });
});

describe('the shape at a path', () => {
  test('is what the schema wants there', () => {
    expect(shapeAt(shapes.machine, ['topSpeed', 3, 'value'])).toEqual({
      type: 'quantity',
      dimension: 'speed',
      form: 'single',
    });
    expect(shapeAt(shapes.trial, ['nozzle'])).toEqual({ type: 'reference', to: 'nozzle' });
    expect(shapeAt(shapes.trial, [])).toBe(shapes.trial);
  });

  test.each([[['nowhere']], [['topSpeed', 'value']], [['name', 0]], [['__proto__']], [['toString']]])(
    'is null at %j',
    (path) => {
      expect(shapeAt(shapes.machine, path)).toBeNull();
    },
  );
});

describe('leaves of a shape', () => {
  const written = {
    sheet: 'a',
    topSpeed: [{ value: 1, source: 'b' }, 5, { source: 'c' }],
    nowhere: [{ source: 'd' }],
  };

  test('are found where the document fills them, in its order', () => {
    const leaves = [...leavesOf('reference', shapes.machine, written)];
    expect(leaves.map(({ path, value }) => [toPointer(path), value])).toEqual([
      ['/sheet', 'a'],
      ['/topSpeed/0/source', 'b'],
      ['/topSpeed/2/source', 'c'],
    ]);
  });

  test('are none where a list stands for a mapping or the other way round', () => {
    expect([...leavesOf('reference', shapes.machine, [written])]).toEqual([]);
    expect([...leavesOf('quantity', shapes.machine, { topSpeed: { value: 1 } })]).toEqual([]);
    expect([...leavesOf('plain', shapes.machine, JSON.parse('{"__proto__": {"name": "x"}}'))]).toEqual([]);
  });
});

test('a mapping is neither a list nor nothing', () => {
  expect([{}, [], null, undefined, 'a', 5].map(isObject)).toEqual([true, false, false, false, false, false]);
});
