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
const foaming: Edit = { in: daisy, from: 'designation: PLA', to: 'designation: PLA-E' };
const named: Edit = { in: daisy, from: 'name: Daisy PLA', to: 'name: Daisy foaming PLA' };

const nearMisses: readonly NearMiss[] = [
  { nearMiss: 'a foamed filament by its designation', edits: [foaming, daisyDensity('0.6 g/cm3')] },
  { nearMiss: 'a foamed filament by its name', edits: [named, daisyDensity('0.6 g/cm3')] },
  {
    nearMiss: 'a flame-retarded grade',
    edits: [
      { in: clover, from: 'designation: PET-G', to: 'designation: PET-G-FR(17)' },
      { in: clover, from: '1.27 g/cm3', to: '1.45 g/cm3' },
    ],
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
