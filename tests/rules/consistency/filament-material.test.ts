import { clover, cloverTrial, type NearMiss, type Slip, testCases, wren } from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a name of the other diameter',
    edits: [{ in: clover, from: 'name: Clover PETG', to: 'name: Clover PETG 2,85 mm' }],
    found: [`error consistency/name-diameter ${clover} | diameter: »1.75 mm`],
  },
  {
    slip: 'a designation of another polymer',
    edits: [{ in: clover, from: 'designation: PET-G', to: 'designation: PLA' }],
    found: [`error consistency/designation ${clover} | designation: »PLA`],
  },
  {
    slip: 'a filler that the profile does not state',
    edits: [{ in: clover, from: 'designation: PET-G', to: 'designation: PET-G-GF20' }],
    found: [`error consistency/designation ${clover} | designation: »PET-G-GF20`],
  },
  {
    slip: 'another share of filler',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-WD25\nfillers:\n  - {symbol: WD, massFraction: 15 %}',
      },
    ],
    found: [`error consistency/designation ${clover} | designation: »PET-G-WD25`],
  },
  {
    slip: 'a trade writing for a designation',
    edits: [{ in: clover, from: 'designation: PET-G', to: 'designation: PETG' }],
    found: [`error consistency/designation ${clover} | designation: »PETG`],
  },
  {
    slip: 'a name that speaks of carbon',
    edits: [{ in: clover, from: 'name: Clover PETG', to: 'name: Clover PETG Carbon' }],
    found: [`warning consistency/name-material ${clover} | name: »Clover PETG Carbon`],
  },
  {
    slip: 'a name that speaks of another polymer',
    edits: [{ in: clover, from: 'name: Clover PETG', to: 'name: Clover PLA' }],
    found: [`warning consistency/name-material ${clover} | name: »Clover PLA`],
  },
  {
    slip: 'glass on brass',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-GF15\nfillers:\n  - {symbol: GF, massFraction: 15 %}',
      },
      { in: clover, from: 'value: 1.27 g/cm3', to: 'value: 1.37 g/cm3' },
      {
        in: wren,
        from: 'diameter: 0.6 mm, material: hardenedSteel',
        to: 'diameter: 0.6 mm, material: brass',
      },
    ],
    found: [
      `error consistency/nozzle-id ${wren} | - {id: hs-0.6, diameter: 0.6 mm, material: »brass}`,
      `warning consistency/abrasive-filler ${cloverTrial} | nozzle: »hs-0.6`,
    ],
  },
  {
    slip: 'a statement that feeds glass to brass',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-GF15\nfillers:\n  - {symbol: GF, massFraction: 15 %}',
      },
      { in: clover, from: 'value: 1.27 g/cm3', to: 'value: 1.37 g/cm3' },
      {
        in: clover,
        below: '  - {value: 8 s, basis: assumed, reason: Bench habit}',
        add: 'meltFlow:\n  - {value: 15 mm3/s, basis: assumed, reason: A guess, at: {machine: plumstead/wren, nozzle: hs-0.4}}',
      },
      {
        in: wren,
        from: 'diameter: 0.4 mm, material: hardenedSteel',
        to: 'diameter: 0.4 mm, material: brass',
      },
    ],
    found: [
      `warning consistency/abrasive-filler ${clover} | - {value: 15 mm3/s, basis: assumed, reason: A guess, at: {machine: plumstead/wren, nozzle: »hs-0.4}}`,
      `error consistency/nozzle-id ${wren} | - {id: hs-0.4, diameter: 0.4 mm, material: »brass}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a name with its own diameter',
    edits: [{ in: clover, from: 'name: Clover PETG', to: 'name: Clover PETG 1.75' }],
  },
  {
    nearMiss: 'a name with a number that is no diameter',
    edits: [{ in: clover, from: 'name: Clover PETG', to: 'name: Clover PETG 285' }],
  },
  {
    nearMiss: 'two fillers',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-(GF10+WD5)\nfillers:\n  - {symbol: GF, massFraction: 10 %}\n  - {symbol: WD, massFraction: 5 %}',
      },
      { in: clover, from: 'value: 1.27 g/cm3', to: 'value: 1.35 g/cm3' },
    ],
  },
  {
    nearMiss: 'a designation that tells the kind of the family',
    edits: [{ in: clover, from: 'designation: PET-G', to: 'designation: PET-G-HI' }],
  },
  {
    nearMiss: 'a colour called carbon black',
    edits: [{ in: clover, from: 'name: Clover PETG', to: 'name: Clover PETG Carbon Black' }],
  },
  {
    nearMiss: 'wood on brass',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-WD15\nfillers:\n  - {symbol: WD, massFraction: 15 %}',
      },
      {
        in: wren,
        below: '      - {id: hs-0.4, diameter: 0.4 mm, material: hardenedSteel}',
        add: '      - {id: br-0.6, diameter: 0.6 mm, material: brass}',
      },
      { in: cloverTrial, from: 'nozzle: hs-0.6', to: 'nozzle: br-0.6' },
    ],
  },
  {
    nearMiss: 'glass on hardened steel',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-GF15\nfillers:\n  - {symbol: GF, massFraction: 15 %}',
      },
      { in: clover, from: 'value: 1.27 g/cm3', to: 'value: 1.37 g/cm3' },
    ],
  },
];

testCases({ slips, nearMisses });
