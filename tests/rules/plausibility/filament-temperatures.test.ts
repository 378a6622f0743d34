import {
  clover,
  cloverTrial,
  daisy,
  type NearMiss,
  petg,
  pla,
  type Slip,
  testCases,
  wren,
} from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a window in degrees Fahrenheit',
    edits: [{ in: clover, from: '230..255 Cel', to: '446..491 Cel' }],
    found: [
      `error plausibility/nozzle-temperature ${clover} | - {value: »446..491 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a window in which nothing flows',
    edits: [{ in: clover, from: '230..255 Cel', to: '142..255 Cel' }],
    found: [
      `error plausibility/nozzle-temperature ${clover} | - {value: »142..255 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a first layer that chars',
    edits: [
      {
        in: clover,
        below: '  - {value: 230..255 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
        add: 'firstLayerNozzleTemperature:\n  - {value: 300 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
      },
    ],
    found: [
      `error plausibility/nozzle-temperature ${clover} | - {value: »300 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a claim at a temperature that the family does not bear',
    edits: [
      {
        in: wren,
        from: 'polymer: PLA, nozzleTemperature: 230 Cel',
        to: 'polymer: PLA, nozzleTemperature: 265 Cel',
      },
    ],
    found: [
      `error plausibility/nozzle-temperature ${wren} | at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: »265 Cel}`,
    ],
  },
  {
    slip: 'a trial with its digits swapped',
    edits: [{ in: cloverTrial, from: 'nozzleTemperature: 245 Cel', to: 'nozzleTemperature: 285 Cel' }],
    found: [`error plausibility/nozzle-temperature ${cloverTrial} | nozzleTemperature: »285 Cel`],
  },
  {
    slip: 'a window that is unusually cold',
    edits: [{ in: clover, from: '230..255 Cel', to: '195..255 Cel' }],
    found: [
      `warning plausibility/unusual-nozzle-temperature ${clover} | - {value: »195..255 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a window that is unusually hot',
    edits: [
      { in: petg, from: '220..260 Cel', to: '220..250 Cel' },
      { in: clover, from: '230..255 Cel', to: '230..278 Cel' },
    ],
    found: [
      `warning plausibility/unusual-nozzle-temperature ${clover} | - {value: »230..278 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a bed of an oven',
    edits: [{ in: clover, from: '70..80 Cel', to: '70..140 Cel' }],
    found: [
      `error plausibility/bed-temperature ${clover} | - {value: »70..140 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a bed in degrees Fahrenheit',
    edits: [{ in: daisy, from: '50..60 Cel', to: '122..140 Cel' }],
    found: [
      `error plausibility/bed-temperature ${daisy} | - {value: »122..140 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet}`,
    ],
  },
  {
    slip: 'a chamber that softens the part',
    edits: [
      {
        in: clover,
        below: '  - {value: 70..80 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
        add: 'chamberTemperature:\n  - {value: 20..95 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
      },
    ],
    found: [
      `error plausibility/chamber-temperature ${clover} | - {value: »20..95 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a dryer that fuses the spool',
    edits: [
      {
        in: clover,
        below: '  - {value: 8 s, basis: assumed, reason: Bench habit}',
        add: 'dryingTemperature:\n  - {value: 90 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
      },
    ],
    found: [
      `error plausibility/drying-temperature ${clover} | - {value: »90 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'drying above the softening that the profile states',
    edits: [
      {
        in: daisy,
        below: '  - {value: 5 s, basis: assumed, reason: Bench habit}',
        add: 'dryingTemperature:\n  - {value: 61 Cel, basis: assumed, reason: Bench habit}',
      },
    ],
    found: [
      `error plausibility/drying-temperature ${daisy} | - {value: »61 Cel, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'drying that is unusual for the family',
    edits: [
      { in: daisy, from: 'value: 58 Cel', to: 'value: 70 Cel' },
      {
        in: pla,
        from: 'value: 45..50 Cel',
        to: 'value: 40..45 Cel',
      },
      {
        in: daisy,
        below: '  - {value: 5 s, basis: assumed, reason: Bench habit}',
        add: 'dryingTemperature:\n  - {value: 68 Cel, basis: assumed, reason: Bench habit}',
      },
    ],
    found: [
      `warning plausibility/unusual-drying ${daisy} | - {value: »68 Cel, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'a softening that is not one of the family',
    edits: [{ in: daisy, from: 'value: 58 Cel', to: 'value: 98 Cel' }],
    found: [
      `warning plausibility/softening ${daisy} | - {value: »98 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a window at the end of the allowance',
    edits: [{ in: clover, from: '230..255 Cel', to: '205..275 Cel' }],
  },
  {
    nearMiss: 'a window that is written in degrees Fahrenheit',
    edits: [{ in: clover, from: 'value: 230..255 Cel', to: "value: '446..491 [degF]'" }],
  },
  {
    nearMiss: 'a filled grade that wants more heat',
    edits: [
      {
        in: clover,
        from: 'designation: PET-G',
        to: 'designation: PET-G-WD15\nfillers:\n  - {symbol: WD, massFraction: 15 %}',
      },
      { in: clover, from: '230..255 Cel', to: '230..279 Cel' },
    ],
  },
  {
    nearMiss: 'a bed a little above softening',
    edits: [{ in: clover, from: '70..80 Cel', to: '70..110 Cel' }],
  },
  {
    nearMiss: 'a warm chamber',
    edits: [
      {
        in: clover,
        below: '  - {value: 70..80 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
        add: 'chamberTemperature:\n  - {value: 20..60 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
      },
    ],
  },
  {
    nearMiss: 'drying below softening',
    edits: [
      {
        in: daisy,
        below: '  - {value: 5 s, basis: assumed, reason: Bench habit}',
        add: 'dryingTemperature:\n  - {value: 50 Cel, basis: assumed, reason: Bench habit}',
      },
    ],
  },
];

testCases({ slips, nearMisses });
