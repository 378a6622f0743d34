import { type NearMiss, type Slip, testCases, wren } from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a contour faster than the machine',
    edits: [{ in: wren, from: 'value: 150 mm/s,', to: 'value: 700 mm/s,' }],
    found: [
      `error consistency/contour-above-top ${wren} | - {value: »700 mm/s, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'a speed that no path can be printed at',
    edits: [{ in: wren, from: 'value: 430 mm/s,', to: 'value: 1600 mm/s,' }],
    found: [
      `note consistency/claimed-flow ${wren} | - {value: »1600 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a nozzle whose id says another diameter',
    edits: [{ in: wren, from: 'hs-0.4, diameter: 0.4 mm', to: 'hs-0.4, diameter: 0.5 mm' }],
    found: [
      `error consistency/nozzle-id ${wren} | - {id: hs-0.4, diameter: »0.5 mm, material: hardenedSteel}`,
    ],
  },
  {
    slip: 'a nozzle whose id says another material',
    edits: [
      {
        in: wren,
        from: 'hs-0.4, diameter: 0.4 mm, material: hardenedSteel',
        to: 'hs-0.4, diameter: 0.4 mm, material: brass',
      },
    ],
    found: [`error consistency/nozzle-id ${wren} | - {id: hs-0.4, diameter: 0.4 mm, material: »brass}`],
  },
  {
    slip: 'a heated chamber without walls',
    edits: [{ in: wren, from: '  enclosed: true\n  heated: false', to: '  enclosed: false\n  heated: true' }],
    found: [`error consistency/chamber-contradiction ${wren} | heated: »true`],
  },
  {
    slip: 'an open machine with a door and a limit of its chamber',
    edits: [
      {
        in: wren,
        from: '  enclosed: true\n  heated: false\n  sensed: true\n',
        to: '  enclosed: false\n  heated: false\n  sensed: false\n  temperatureLimit:\n    - {value: 50 Cel, basis: claimed, source: plumstead-wren-sheet}\n',
      },
      { in: wren, below: 'spool: {mass: 1 kg}', add: 'sensors: [doorOpen]' },
    ],
    found: [`error consistency/chamber-contradiction ${wren} | enclosed: »false`],
  },
  {
    slip: 'an open machine with a chamber sensor',
    edits: [{ in: wren, from: '  enclosed: true', to: '  enclosed: false' }],
    found: [`error consistency/chamber-contradiction ${wren} | enclosed: »false`],
  },
  {
    slip: 'a dryer in °F',
    edits: [
      {
        in: wren,
        from: 'spool: {mass: 1 kg}',
        to: 'dryer: {setting: adjustable, range: 104..149 Cel}\nspool: {mass: 1 kg}',
      },
    ],
    found: [
      `warning consistency/machine-temperatures ${wren} | dryer: {setting: adjustable, range: »104..149 Cel}`,
    ],
  },
  {
    slip: 'two sides that are swapped',
    edits: [{ in: wren, from: 'z: 242 mm', to: 'z: 242 mm, asStated: 228 x 236 x 242 mm' }],
    found: [
      `warning consistency/envelope-sides ${wren} | envelope: {x: »236 mm, y: 228 mm, z: 242 mm, asStated: 228 x 236 x 242 mm}`,
    ],
  },
  {
    slip: 'a side that the sheet states otherwise',
    edits: [{ in: wren, from: 'z: 242 mm', to: 'z: 242 mm, asStated: 236 x 228 x 224 mm' }],
    found: [
      `warning consistency/envelope-sides ${wren} | envelope: {x: 236 mm, y: 228 mm, z: »242 mm, asStated: 236 x 228 x 224 mm}`,
    ],
  },
  {
    slip: 'parallel arms that reach farther to one side',
    edits: [{ in: wren, from: 'layout: gantry', to: 'layout: parallelArm' }],
    found: [`warning consistency/envelope-sides ${wren} | envelope: {x: »236 mm, y: 228 mm, z: 242 mm}`],
  },
  {
    slip: 'a sensor that the chamber does not know of',
    edits: [
      { in: wren, from: '  sensed: true', to: '  sensed: false' },
      { in: wren, below: 'spool: {mass: 1 kg}', add: 'sensors: [chamberTemperature]' },
    ],
    found: [`error consistency/chamber-contradiction ${wren} | sensed: »false`],
  },
  {
    slip: 'a fixed dryer without its temperature',
    edits: [{ in: wren, below: '  sensed: true', add: 'dryer: {setting: fixed, range: 40..70 Cel}' }],
    found: [`error consistency/dryer-setting ${wren} | dryer: {setting: »fixed, range: 40..70 Cel}`],
  },
  {
    slip: 'a fixed dryer that fuses a spool of its trials',
    edits: [{ in: wren, below: '  sensed: true', add: 'dryer: {setting: fixed, temperature: 65 Cel}' }],
    found: [
      'warning consistency/dryer-too-hot trials/2026/wren-daisy-pla-215.yaml | filament: »oakhollow/daisy-pla',
    ],
  },
  {
    slip: 'an adjustable dryer that is never cold enough',
    edits: [{ in: wren, below: '  sensed: true', add: 'dryer: {setting: adjustable, range: 60..90 Cel}' }],
    found: [
      'warning consistency/dryer-too-hot trials/2026/wren-daisy-pla-215.yaml | filament: »oakhollow/daisy-pla',
    ],
  },
  {
    slip: 'a flow of a nozzle that does not fit the hot end',
    edits: [
      {
        in: wren,
        below: '      - {id: hs-0.4, diameter: 0.4 mm, material: hardenedSteel}',
        add: '    meltFlow:\n      - {value: 20 mm3/s, basis: claimed, source: plumstead-wren-sheet, at: {nozzle: hs-0.6}}\n  - id: right\n    filamentDiameter: 1.75 mm\n    nozzles:',
      },
    ],
    found: [
      `error consistency/foreign-condition ${wren} | - {value: 20 mm3/s, basis: claimed, source: plumstead-wren-sheet, at: {nozzle: »hs-0.6}}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'an envelope as the sheet rounds it, in inches',
    edits: [{ in: wren, from: 'z: 242 mm', to: 'z: 242 mm, asStated: 9.3 x 9 x 9.5 in' }],
  },
  {
    nearMiss: 'parallel arms by diameter and height',
    edits: [
      { in: wren, from: 'layout: gantry', to: 'layout: parallelArm' },
      {
        in: wren,
        from: 'x: 236 mm, y: 228 mm, z: 242 mm',
        to: 'x: 236 mm, y: 236 mm, z: 242 mm, asStated: 236 x 242 mm',
      },
    ],
  },
  {
    nearMiss: 'a nozzle whose id is written without a point, and after its place',
    edits: [{ in: wren, from: 'id: hs-0.4', to: 'id: left-hs-04' }],
  },
  {
    nearMiss: 'an open machine for cold materials',
    edits: [
      { in: wren, from: 'enclosed: true', to: 'enclosed: false' },
      { in: wren, from: 'sensed: true', to: 'sensed: false' },
    ],
  },
  {
    nearMiss: 'an adjustable dryer that can be set cold enough',
    edits: [{ in: wren, below: '  sensed: true', add: 'dryer: {setting: adjustable, range: 40..90 Cel}' }],
  },
  {
    nearMiss: 'a nozzle whose id tells no diameter',
    edits: [{ in: wren, from: 'id: hs-0.4, diameter: 0.4 mm', to: 'id: hs-4, diameter: 0.5 mm' }],
  },
];

testCases({ slips, nearMisses });
