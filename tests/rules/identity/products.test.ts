import { clover, type NearMiss, type Slip, testCases } from '../edited-sample.ts';

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
    found: ['error identity/same-product filaments/oakhollow/petg-clover.yaml | name: »Clover PETG'],
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
    found: ['error identity/same-product filaments/oakhollow/petg-clover.yaml | name: »CLOVER-PETG'],
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
    found: ['warning identity/near-duplicate filaments/oakhollow/clovre-petg.yaml | name: »Clovre PETG'],
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
];

testCases({ slips, nearMisses });
