import { clover, daisy, type NearMiss, type Slip, testCases } from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a density of another polymer',
    edits: [{ in: clover, from: 'value: 1.27 g/cm3', to: 'value: 1.04 g/cm3' }],
    found: [
      `warning plausibility/unusual-density ${clover} | - {value: »1.04 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a density that no such filament has',
    edits: [{ in: clover, from: 'value: 1.27 g/cm3', to: 'value: 0.89 g/cm3' }],
    found: [
      `error plausibility/density ${clover} | - {value: »0.89 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a filler that is not in the density',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-GF30\nfillers:\n  - {symbol: GF, massFraction: 30 %}',
      },
    ],
    found: [
      `warning plausibility/unusual-density ${clover} | - {value: »1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a tolerance that lost a zero',
    edits: [{ in: daisy, from: 'diameterTolerance: 0.03 mm', to: 'diameterTolerance: 0.3 mm' }],
    found: [`warning plausibility/diameter-tolerance ${daisy} | diameterTolerance: »0.3 mm`],
  },
  {
    slip: 'a tolerance of micrometres',
    edits: [{ in: daisy, from: 'diameterTolerance: 0.03 mm', to: 'diameterTolerance: 0.003 mm' }],
    found: [`warning plausibility/diameter-tolerance ${daisy} | diameterTolerance: »0.003 mm`],
  },
  {
    slip: 'a diameter with swapped digits',
    edits: [{ in: clover, from: 'diameter: 1.75 mm', to: 'diameter: 1.57 mm' }],
    found: [`warning plausibility/filament-diameter ${clover} | diameter: »1.57 mm`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a density within the allowance',
    edits: [{ in: clover, from: 'value: 1.27 g/cm3', to: 'value: 1.33 g/cm3' }],
  },
  {
    nearMiss: 'a filler that is in the density',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-GF12\nfillers:\n  - {symbol: GF, massFraction: 12 %}',
      },
      { in: clover, from: 'value: 1.27 g/cm3', to: 'value: 1.37 g/cm3' },
    ],
  },
];

testCases({ slips, nearMisses });
