import { describe, expect, test } from 'vitest';
import { countAltered } from '../../scripts/sheets/count-altered.ts';
import { countHonest } from '../../scripts/sheets/count-honest.ts';
import { readSheetArguments } from '../../scripts/sheets/sheet-arguments.ts';

describe('the arguments', () => {
  test('are a method, a number of sheets, a seed and a part of a kind', () => {
    expect(readSheetArguments(['flowLadder', '20', '7', 'told', '--list'])).toEqual({
      methods: ['flowLadder'],
      count: 20,
      seed: 7,
      kind: 'told',
      lists: true,
    });
  });

  test.each([['all', 'many'], ['all', '0'], ['all', '20', 'tuesday'], ['all', '20', '1.5'], ['flowLader']])(
    'are refused where they mean nothing: %s %s %s',
    (...given) => {
      expect(() => readSheetArguments(given.filter((each) => each !== undefined))).toThrow(
        /is a whole|no simulated/,
      );
    },
  );
});

const { methods } = readSheetArguments([]);

test.each(methods)(
  'no error is found in honest sheets of %s, and hardly a warning',
  { tags: 'long' },
  (method) => {
    const { sheets, withError, withWarning } = countHonest({ method, count: 15, seed: 41 });
    expect({ sheets: sheets > 0, withError, isQuiet: withWarning <= 1 }).toEqual({
      sheets: true,
      withError: 0,
      isQuiet: true,
    });
  },
);

test.each(['a row told twice', 'copied whole', 'copied in another order', 'copied, every fifth'])(
  'sheets are found that are altered: %s',
  { tags: 'long' },
  (kind) => {
    const { kinds } = countAltered({ method: 'flowLadder', count: 5, seed: 41 }, kind);
    const counts = [...kinds.values()].map(({ planted, found }) => ({ planted, most: found >= 8 }));
    expect(counts).toEqual([{ planted: 10, most: true }]);
  },
);
