import {
  clover,
  cloverTrial,
  daisy,
  type Edit,
  type NearMiss,
  type Slip,
  testCases,
  wren,
} from '../edited-sample.ts';

const sheet = 'basis: claimed, source: oakhollow-daisy-pla-sheet';
const daisyDensity = (to: string): Edit => ({ in: daisy, from: '1.24 g/cm3', to });

const claimed = (petg: string) => `basis: claimed, source: oakhollow-${petg}-petg-sheet`;

/** A petg that no trial has weighed, with a sheet of its own, so that its density alone is judged. */
function untried(designation: string, name: string, density: string): readonly Edit[] {
  return [
    {
      copy: clover,
      to: 'filaments/oakhollow/thistle-petg.yaml',
      edits: [
        ['id: oakhollow/clover-petg', 'id: oakhollow/thistle-petg'],
        ['name: Clover PETG', `name: ${name}`],
        ['designation: PET-G', `designation: ${designation}`],
        [`1.27 g/cm3, ${claimed('clover')}`, `${density}, ${claimed('thistle')}`],
        [`230..255 Cel, ${claimed('clover')}`, `230..255 Cel, ${claimed('thistle')}`],
        [`70..80 Cel, ${claimed('clover')}`, `70..80 Cel, ${claimed('thistle')}`],
        ['sheet: oakhollow-clover-petg-sheet', 'sheet: oakhollow-thistle-petg-sheet'],
      ],
    },
    {
      copy: 'sources/oakhollow-clover-petg-sheet.yaml',
      to: 'sources/oakhollow-thistle-petg-sheet.yaml',
      edits: [
        ['id: oakhollow-clover-petg-sheet', 'id: oakhollow-thistle-petg-sheet'],
        ['Clover PETG', name],
      ],
    },
  ];
}

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a foamed filament by its designation',
    edits: untried('PET-G-E', 'Thistle PETG', '0.6 g/cm3'),
  },
  {
    nearMiss: 'a foamed filament by its name',
    edits: untried('PET-G', 'Thistle foaming PETG', '0.6 g/cm3'),
  },
  {
    nearMiss: 'a flame-retarded grade',
    edits: untried('PET-G-FR(17)', 'Thistle PETG', '1.45 g/cm3'),
  },
  {
    nearMiss: 'a move that takes no pause',
    edits: [
      {
        in: wren,
        below: '  - {value: 8200 mm/s2, basis: claimed, source: plumstead-wren-sheet}',
        add: 'travelPause:\n  - {value: 0 s, basis: assumed, reason: Nothing is drawn back}',
      },
    ],
  },
  {
    nearMiss: 'a bed without a heater, on which PLA holds with tape',
    edits: [
      {
        in: wren,
        from: 'bed:\n  temperatureLimit:\n    - {value: 100 Cel, basis: claimed, source: plumstead-wren-sheet}',
        to: 'bed: {heated: false}',
      },
      { in: clover, from: '70..80 Cel', to: '20..60 Cel' },
    ],
  },
];

const slips: readonly Slip[] = [
  {
    slip: 'a density that lost a digit in a filament that is not foamed',
    edits: [daisyDensity('0.6 g/cm3')],
    found: [`error plausibility/density ${daisy} | - {value: »0.6 g/cm3, ${sheet}}`],
  },
  {
    slip: 'a bed without a heater for a plastic that needs one',
    edits: [
      {
        in: wren,
        from: 'bed:\n  temperatureLimit:\n    - {value: 100 Cel, basis: claimed, source: plumstead-wren-sheet}',
        to: 'bed: {heated: false}',
      },
    ],
    found: [`warning consistency/bed-limit ${cloverTrial} | filament: »oakhollow/clover-petg`],
  },
  {
    slip: 'a spool that is far too cheap for its mass',
    edits: [
      { in: daisy, from: 'spoolMass: 1 kg', to: `spoolMass: 1 kg\nprice:\n  - {value: 3.2 EUR, ${sheet}}` },
    ],
    found: [`warning plausibility/price ${daisy} | - {value: »3.2 EUR, ${sheet}}`],
  },
];

testCases({ slips, nearMisses });
