import { expect, it } from 'vitest';
import { clover, findingsAfter, type NearMiss, type Slip, tables } from './edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a product that is described twice',
    edits: [
      {
        copy: clover,
        to: 'filaments/oakhollow/petg-clover.yaml',
        edits: [['id: oakhollow/clover-petg', 'id: oakhollow/petg-clover']],
      },
    ],
    found: ['error identity/same-product filaments/oakhollow/petg-clover.yaml | name: Clover PETG'],
  },
  {
    slip: 'a product whose name is spelt in another way',
    edits: [
      {
        copy: clover,
        to: 'filaments/oakhollow/petg-clover.yaml',
        edits: [
          ['id: oakhollow/clover-petg', 'id: oakhollow/petg-clover'],
          ['name: Clover PETG', 'name: CLOVER-PETG'],
        ],
      },
    ],
    found: ['error identity/same-product filaments/oakhollow/petg-clover.yaml | name: CLOVER-PETG'],
  },
  {
    slip: 'two names that differ by a letter, and no figure that differs',
    edits: [
      {
        copy: clover,
        to: 'filaments/oakhollow/clovre-petg.yaml',
        edits: [
          ['id: oakhollow/clover-petg', 'id: oakhollow/clovre-petg'],
          ['name: Clover PETG', 'name: Clovre PETG'],
        ],
      },
    ],
    found: ['warning identity/near-duplicate filaments/oakhollow/clovre-petg.yaml | name: Clovre PETG'],
  },
  {
    slip: 'a thirtieth of February',
    edits: [
      { in: tables, from: 'issued: {date-parts: [[2025]]}', to: 'issued: {date-parts: [[2025, 2, 30]]}' },
    ],
    found: [`error dates/calendar ${tables} | issued: {date-parts: [[2025, 2, 30]]}`],
  },
  {
    slip: 'a source from the future',
    edits: [{ in: tables, from: 'issued: {date-parts: [[2025]]}', to: 'issued: {date-parts: [[2052]]}' }],
    found: [`error dates/source-order ${tables} | issued: {date-parts: [[2052]]}`],
  },
  {
    slip: 'a source that was read before it was issued',
    edits: [
      {
        in: tables,
        from: 'issued: {date-parts: [[2025]]}',
        to: 'issued: {date-parts: [[2025, 6]]}\naccessed: {date-parts: [[2024, 7, 1]]}',
      },
    ],
    found: [`error dates/source-order ${tables} | accessed: {date-parts: [[2024, 7, 1]]}`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a product in another diameter',
    edits: [
      {
        copy: clover,
        to: 'filaments/oakhollow/clover-petg-285.yaml',
        edits: [
          ['id: oakhollow/clover-petg', 'id: oakhollow/clover-petg-285'],
          ['diameter: 1.75 mm', 'diameter: 2.85 mm'],
        ],
      },
    ],
  },
  {
    nearMiss: 'names that differ by a letter with other figures',
    edits: [
      {
        copy: clover,
        to: 'filaments/oakhollow/clovre-petg.yaml',
        edits: [
          ['id: oakhollow/clover-petg', 'id: oakhollow/clovre-petg'],
          ['name: Clover PETG', 'name: Clovre PETG'],
          ['value: 1.27 g/cm3', 'value: 1.28 g/cm3'],
        ],
      },
    ],
  },
  {
    nearMiss: 'a leap day',
    edits: [
      { in: tables, from: 'issued: {date-parts: [[2025]]}', to: 'issued: {date-parts: [[2024, 2, 29]]}' },
    ],
  },
  {
    nearMiss: 'a source that was read in the month in which it was issued',
    edits: [
      {
        in: tables,
        from: 'issued: {date-parts: [[2025]]}',
        to: 'issued: {date-parts: [[2025, 6]]}\naccessed: {date-parts: [[2025, 6, 1]]}',
      },
    ],
  },
];

it.each(slips)('finds $slip', ({ edits, found }) => {
  expect(findingsAfter(edits)).toEqual(found);
});

it.each(nearMisses)('accepts $nearMiss', ({ edits }) => {
  expect(findingsAfter(edits)).toEqual([]);
});
