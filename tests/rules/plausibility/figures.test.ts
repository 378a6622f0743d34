import {
  clover,
  cloverTrial,
  daisy,
  hook,
  house,
  type NearMiss,
  petg,
  type Slip,
  testCases,
  wren,
} from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'an acceleration that lost a digit',
    edits: [{ in: wren, from: 'value: 8200 mm/s2', to: 'value: 1000 mm/s2' }],
    found: [
      `warning plausibility/time-to-top-speed ${wren} | - {value: »1000 mm/s2, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a bed too near to the nozzle',
    edits: [
      { in: clover, from: '70..80 Cel', to: '70..110 Cel' },
      { in: clover, from: '230..255 Cel', to: '160..255 Cel' },
    ],
    found: [
      `warning plausibility/unusual-nozzle-temperature ${clover} | - {value: »160..255 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
      `warning consistency/filament-temperatures ${clover} | - {value: »70..110 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'an envelope in centimetres',
    edits: [{ in: wren, from: 'x: 236 mm, y', to: 'x: 22 mm, y' }],
    found: [`warning plausibility/unusual-figure ${wren} | envelope: {x: »22 mm, y: 228 mm, z: 242 mm}`],
  },
  {
    slip: 'a layer time of minutes',
    edits: [{ in: daisy, from: 'value: 5 s', to: 'value: 5 min' }],
    found: [
      `warning plausibility/unusual-figure ${daisy} | - {value: »5 min, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'the end of a range that lies outside',
    edits: [{ in: clover, from: '70..80 Cel', to: '7..80 Cel' }],
    found: [
      `warning plausibility/unusual-figure ${clover} | - {value: »7..80 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'a condition that lies outside',
    edits: [
      {
        in: wren,
        from: 'at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 230 Cel}',
        to: 'at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 230 Cel, layerHeight: 3 mm}',
      },
    ],
    found: [
      `warning plausibility/unusual-figure ${wren} | at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 230 Cel, layerHeight: »3 mm}`,
    ],
  },
  {
    slip: 'a house rule that prints ribbons',
    edits: [{ in: house, from: 'layerHeights: [25 %, 50 %, 70 %]', to: 'layerHeights: [25 %, 50 %, 85 %]' }],
    found: [`warning plausibility/unusual-figure ${house} | layerHeights: [25 %, 50 %, »85 %]`],
  },
  {
    slip: 'a deficit of half of the flow',
    edits: [{ in: house, from: 'acceptedDeficit: 5 %', to: 'acceptedDeficit: 0.05 %' }],
    found: [`warning plausibility/unusual-figure ${house} | acceptedDeficit: »0.05 %`],
  },
  {
    slip: 'a deficit that no bench tells',
    edits: [{ in: house, from: 'acceptedDeficit: 5 %', to: 'acceptedDeficit: 0.5 %' }],
    found: [`warning plausibility/unusual-figure ${house} | acceptedDeficit: »0.5 %`],
  },
  {
    slip: 'temperatures in steps that no machine holds',
    edits: [{ in: house, from: 'runUp: 0.1 mm}', to: 'runUp: 0.1 mm, temperature: 0.5 K}' }],
    found: [
      `warning plausibility/unusual-figure ${house} | rounding: {speed: 1 mm/s, flow: 0.1 mm3/s, acceleration: 50 mm/s2, runUp: 0.1 mm, temperature: »0.5 K}`,
    ],
  },
  {
    slip: 'a hot end in °F',
    edits: [{ in: wren, from: 'value: 290 Cel', to: 'value: 554 Cel' }],
    found: [
      `warning plausibility/unusual-figure ${wren} | - {value: »554 Cel, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a job of no end',
    edits: [{ in: hook, from: 'layers: 120 {count}', to: 'layers: 120000 {count}' }],
    found: [`error plausibility/unusual-figure ${hook} | layers: »120000 {count}`],
  },
  {
    slip: 'a conductivity that no unfilled plastic has',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'thermalConductivity:\n  - {value: 0.5..0.6 W/m/K, basis: published, source: invented-plastics-tables}',
      },
    ],
    found: [
      `warning plausibility/unusual-figure ${petg} | - {value: »0.5..0.6 W/m/K, basis: published, source: invented-plastics-tables}`,
    ],
  },
  {
    slip: 'a room that is an oven',
    edits: [{ in: cloverTrial, from: 'ambientTemperature: 21 Cel', to: 'ambientTemperature: 210 Cel' }],
    found: [`error plausibility/impossible-figure ${cloverTrial} | ambientTemperature: »210 Cel`],
  },
  {
    slip: 'a zero for what is not known',
    edits: [{ in: clover, below: 'diameter: 1.75 mm', add: 'diameterTolerance: 0 mm' }],
    found: [`error plausibility/not-positive ${clover} | diameterTolerance: »0 mm`],
  },
  {
    slip: 'a negative share',
    edits: [{ in: house, from: 'flowMargin: 10 %', to: 'flowMargin: -10 %' }],
    found: [`error plausibility/not-positive ${house} | flowMargin: »-10 %`],
  },
  {
    slip: 'a machine that costs a house',
    edits: [
      {
        in: wren,
        below: "  - {value: '52 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}",
        add: 'price:\n  - {value: 990000 EUR, basis: claimed, source: plumstead-wren-sheet}',
      },
    ],
    found: [
      `warning plausibility/price ${wren} | - {value: »990000 EUR, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a machine for nothing',
    edits: [
      {
        in: wren,
        below: "  - {value: '52 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}",
        add: 'price:\n  - {value: 0 EUR, basis: claimed, source: plumstead-wren-sheet}',
      },
    ],
    found: [
      `warning plausibility/price ${wren} | - {value: »0 EUR, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a fan beyond full speed',
    edits: [
      {
        in: clover,
        below: '  - {value: 70..80 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
        add: 'fan:\n  - {value: 30..120 %, basis: claimed, source: oakhollow-clover-petg-sheet}',
      },
    ],
    found: [
      `error plausibility/fraction-above-one ${clover} | - {value: »30..120 %, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a heavy bed that runs up slowly',
    edits: [{ in: wren, from: 'value: 8200 mm/s2', to: 'value: 1550 mm/s2' }],
  },
  {
    nearMiss: 'a price in a currency of many digits',
    edits: [
      {
        in: wren,
        below: "  - {value: '52 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}",
        add: 'price:\n  - {value: 990000 JPY, basis: claimed, source: plumstead-wren-sheet}',
      },
    ],
  },
  {
    nearMiss: 'a wide flat gantry',
    edits: [{ in: wren, from: 'x: 236 mm, y: 228 mm, z: 242 mm', to: 'x: 3000 mm, y: 1500 mm, z: 250 mm' }],
  },
  {
    nearMiss: 'a bench that tells 1 % of the flow',
    edits: [{ in: house, from: 'acceptedDeficit: 5 %', to: 'acceptedDeficit: 1 %' }],
  },
  { nearMiss: 'a large machine', edits: [{ in: wren, from: 'x: 236 mm, y: 228 mm', to: 'x: 2 m, y: 2 m' }] },
  {
    nearMiss: 'a range that begins at zero',
    edits: [
      {
        in: clover,
        below: '  - {value: 70..80 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}',
        add: 'fan:\n  - {value: 0..100 %, basis: claimed, source: oakhollow-clover-petg-sheet}',
      },
    ],
  },
  {
    nearMiss: 'a first layer that needs a cold bed',
    edits: [{ in: clover, from: '70..80 Cel', to: '15..80 Cel' }],
  },
  {
    nearMiss: 'lines wider than the nozzle',
    edits: [{ in: house, from: 'lineWidths: [110 %, 120 %]', to: 'lineWidths: [110 %, 220 %]' }],
  },
  { nearMiss: 'no margin at all', edits: [{ in: house, from: 'flowMargin: 10 %', to: 'flowMargin: 0 %' }] },
];

testCases({ slips, nearMisses });
