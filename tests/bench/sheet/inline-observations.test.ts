import { expect, test } from 'vitest';
import { readInlineObservations } from '../../../src/bench/sheet/inline-observations.ts';

const plan = { columns: { commandedFlow: 'volumeFlow', extrudedMass: 'mass' } } as const;
const units = { extrudedMass: 'mg', commandedFlow: 'mm3/s' };

test('reads rows in the order of their columns, in canonical units', () => {
  expect(
    readInlineObservations(
      {
        columns: units,
        rows: [
          [1490, 20],
          [1480, 28],
        ],
      },
      plan,
    ),
  ).toEqual({
    ok: true,
    value: { columns: { commandedFlow: [20, 28], extrudedMass: [1.49, 1.48] }, rows: [1, 2] },
  });
});

test.each([
  ['a unit of something else', { ...units, commandedFlow: 'mm/s' }, [[1490, 20]], 'wrongUnit'],
  ['a missing column', { commandedFlow: 'mm3/s' }, [[20]], 'missingColumn'],
  ['an unknown column', { ...units, note: 'g' }, [[1490, 20, 1]], 'unknownColumn'],
  ['no rows', units, [], 'emptySheet'],
  ['a short row', units, [[1490, 20], [1490]], 'raggedRow'],
  ['a number that is none', units, [[Number.NaN, 20]], 'notANumber'],
  [
    'one without an end in its canonical unit',
    { ...units, commandedFlow: 'cm3/s' },
    [[1490, 1e308]],
    'notANumber',
  ],
])('refuses %s', (_, written, rows, code) => {
  expect(readInlineObservations({ columns: written, rows }, plan)).toMatchObject({
    ok: false,
    error: [{ code }],
  });
});

test('names the row of a problem, counted from 1', () => {
  const read = readInlineObservations({ columns: units, rows: [[1490, 20], [1490]] }, plan);
  expect(read).toMatchObject({ ok: false, error: [{ row: 2 }] });
});
