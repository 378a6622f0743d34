import { expect, it } from 'vitest';
import {
  clover,
  cloverTrial,
  daisyTrial,
  findingsAfter,
  hook,
  house,
  type NearMiss,
  type Slip,
  testCases,
  wren,
} from '../edited-sample.ts';

const sheet = 'trials/2026/wren-daisy-pla-230.csv';
const limit = 'temperatureLimit:\n    - {value: 100 Cel, basis: claimed, source: plumstead-wren-sheet}';
const bead = 'layerHeight: 0.3 mm, lineWidth: 0.66 mm';
const infill = `  infill: {pathLength: 30 m, meanSegment: 20 mm, ${bead}}`;
const settings = (speed: string, acceleration: string, more = '') => `settings:
${more}  outerContour: {speed: 120 mm/s, acceleration: 3000 mm/s2}
  infill: {speed: ${speed} mm/s, acceleration: ${acceleration} mm/s2}`;

const slips: readonly Slip[] = [
  {
    slip: 'a print set faster than its machine goes',
    edits: [{ in: cloverTrial, below: 'filament: oakhollow/clover-petg', add: settings('900', '4000') }],
    found: [
      `warning consistency/settings-above-machine ${cloverTrial} | infill: {speed: »900 mm/s, acceleration: 4000 mm/s2}`,
    ],
  },
  {
    slip: 'a setting that won a digit',
    edits: [{ in: cloverTrial, below: 'filament: oakhollow/clover-petg', add: settings('300', '300') }],
    found: [
      `warning consistency/settings-apart ${cloverTrial} | infill: {speed: 300 mm/s, acceleration: »300 mm/s2}`,
    ],
  },
  {
    slip: 'an outer contour faster than the inner one',
    edits: [
      {
        in: cloverTrial,
        below: 'filament: oakhollow/clover-petg',
        add: settings('300', '4000', '  innerContour: {speed: 110 mm/s, acceleration: 3000 mm/s2}\n'),
      },
    ],
    found: [
      `warning consistency/settings-apart ${cloverTrial} | outerContour: {speed: »120 mm/s, acceleration: 3000 mm/s2}`,
    ],
  },
  {
    slip: 'a travel that lost a digit',
    edits: [
      {
        in: cloverTrial,
        below: 'filament: oakhollow/clover-petg',
        add: settings('180', '4000', '  travel: {speed: 30 mm/s, acceleration: 4000 mm/s2}\n'),
      },
    ],
    found: [
      `warning consistency/settings-apart ${cloverTrial} | infill: {speed: »180 mm/s, acceleration: 4000 mm/s2}`,
    ],
  },
  {
    slip: 'a gauge far coarser than its display',
    edits: [
      {
        in: cloverTrial,
        below: 'scale: {resolution: 0.001 g}',
        add: 'gauge: {resolution: 0.001 mm, accuracy: 0.04 mm}',
      },
    ],
    found: [
      `warning consistency/gauge-accuracy ${cloverTrial} | gauge: {resolution: 0.001 mm, accuracy: »0.04 mm}`,
    ],
  },
  {
    slip: 'a bed in °F',
    edits: [{ in: wren, from: limit, to: limit.replace('100', '212') }],
    found: [
      `warning consistency/machine-temperatures ${wren} | - {value: »212 Cel, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a chamber in °F',
    edits: [
      {
        in: wren,
        below: '  sensed: true',
        add: '  temperatureLimit:\n    - {value: 122 Cel, basis: claimed, source: plumstead-wren-sheet}',
      },
    ],
    found: [
      `warning consistency/machine-temperatures ${wren} | - {value: »122 Cel, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a spool that lost its decimal point',
    edits: [
      {
        copy: clover,
        to: 'filaments/oakhollow/thistle-petg.yaml',
        edits: [
          ['oakhollow/clover-petg', 'oakhollow/thistle-petg'],
          ['Clover PETG', 'Thistle PETG'],
          ['nozzleTemperature:\n', 'spoolMass: 7.5 kg\nnozzleTemperature:\n'],
        ],
      },
    ],
    found: [
      'warning consistency/spool-fits-nowhere filaments/oakhollow/thistle-petg.yaml | spoolMass: »7.5 kg',
    ],
  },
  {
    slip: 'a chamber window that is that of another filament: hotter than the bed',
    edits: [
      {
        in: clover,
        from: 'bedTemperature:\n  - {value: 70..80 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}\n',
        to: 'bedTemperature:\n  - {value: 40..50 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}\nchamberTemperature:\n  - {value: 20..70 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}\n',
      },
    ],
    found: [
      `warning consistency/filament-temperatures ${clover} | - {value: »20..70 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
  {
    slip: 'segments of the outer contour longer than it is in two layers',
    edits: [{ in: hook, from: 'meanSegment: 12 mm', to: 'meanSegment: 420 mm' }],
    found: [
      `error consistency/segment-length ${hook} | outerContour: {pathLength: 14 m, meanSegment: »420 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
    ],
  },
  {
    slip: 'segments of one feature in another unit',
    edits: [{ in: house, from: 'innerContour: 20 mm', to: 'innerContour: 20 cm' }],
    found: [`warning consistency/segments-apart ${house} | innerContour: »20 cm`],
  },
  {
    slip: 'paths of inner contours that lost a digit',
    edits: [
      { in: hook, below: infill, add: `  innerContour: {pathLength: 1.4 m, meanSegment: 12 mm, ${bead}}` },
    ],
    found: [
      `warning consistency/paths-apart ${hook} | innerContour: {pathLength: »1.4 m, meanSegment: 12 mm, ${bead}}`,
    ],
  },
  {
    slip: 'a first layer without anything on top',
    edits: [
      {
        in: hook,
        below: infill,
        add: `  firstLayer: {pathLength: 60 m, meanSegment: 20 mm, ${bead}}\n  topSurface: {pathLength: 6 m, meanSegment: 20 mm, ${bead}}`,
      },
    ],
    found: [
      `warning consistency/paths-apart ${hook} | topSurface: {pathLength: »6 m, meanSegment: 20 mm, ${bead}}`,
    ],
  },
  {
    slip: 'a line width of one feature that lost its decimal point',
    edits: [{ in: hook, from: infill, to: infill.replace('0.66', '2.2') }],
    found: [
      `warning consistency/beads-apart ${hook} | outerContour: {pathLength: 14 m, meanSegment: 12 mm, ${bead.replace('0.66', '»0.66')}}`,
    ],
  },
  {
    slip: 'acceleration of a hidden line that lost a digit',
    edits: [{ in: house, from: 'innerContour: 80 %', to: 'innerContour: 8 %' }],
    found: [`warning consistency/fractions-apart ${house} | innerContour: »8 %`],
  },
  {
    slip: 'rounding in a unit that the tables do not use',
    edits: [{ in: house, from: 'speed: 1 mm/s,', to: 'speed: 100 mm/min,' }],
    found: [
      `warning consistency/odd-rounding ${house} | rounding: {speed: »100 mm/min, flow: 0.1 mm3/s, acceleration: 50 mm/s2, runUp: 0.1 mm}`,
    ],
  },
  {
    slip: 'a contour speed in mm/min',
    edits: [{ in: wren, from: 'value: 150 mm/s, basis', to: 'value: 600 mm/min, basis' }],
    found: [
      `warning consistency/contour-share ${wren} | - {value: »600 mm/min, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'a claim far below what the bench has found',
    edits: [{ in: wren, from: 'value: 32 mm3/s', to: 'value: 13 mm3/s' }],
    found: [`warning consistency/claim-below-trials ${wren} | - value: »13 mm3/s`],
  },
  {
    slip: 'a chamber above the limit of the machine',
    edits: [
      {
        in: wren,
        below: '  sensed: true',
        add: '  temperatureLimit:\n    - {value: 60 Cel, basis: claimed, source: plumstead-wren-sheet}',
      },
      { in: cloverTrial, below: '  nozzleTemperature: 245 Cel', add: '  chamberTemperature: 63 Cel' },
    ],
    found: [`warning consistency/chamber-limit ${cloverTrial} | chamberTemperature: »63 Cel`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'an infill that the melt holds back, and travel that it does not',
    edits: [
      {
        in: cloverTrial,
        below: 'filament: oakhollow/clover-petg',
        add: settings(
          '35',
          '4000',
          '  innerContour: {speed: 120 mm/s, acceleration: 3000 mm/s2}\n  firstLayer: {speed: 50 mm/s, acceleration: 2000 mm/s2}\n  overhang: {speed: 15 mm/s, acceleration: 2000 mm/s2}\n  travel: {speed: 300 mm/s, acceleration: 4000 mm/s2}\n',
        ),
      },
    ],
  },
  {
    nearMiss: 'a print set to all that its machine does',
    edits: [{ in: cloverTrial, below: 'filament: oakhollow/clover-petg', add: settings('430', '8200') }],
  },
  {
    nearMiss: 'a gauge that is good for some steps of its display',
    edits: [
      {
        in: cloverTrial,
        below: 'scale: {resolution: 0.001 g}',
        add: 'gauge: {resolution: 0.001 mm, accuracy: 0.004 mm}',
      },
    ],
  },
  {
    nearMiss: 'a bed that gets very hot',
    edits: [{ in: wren, from: limit, to: limit.replace('100', '190') }],
  },
  {
    nearMiss: 'a chamber as hot as its bed',
    edits: [
      {
        in: wren,
        below: '  sensed: true',
        add: '  temperatureLimit:\n    - {value: 100 Cel, basis: claimed, source: plumstead-wren-sheet}',
      },
    ],
  },
  {
    nearMiss: 'a spool for a stand beside the machine',
    edits: [
      {
        copy: clover,
        to: 'filaments/oakhollow/thistle-petg.yaml',
        edits: [
          ['oakhollow/clover-petg', 'oakhollow/thistle-petg'],
          ['Clover PETG', 'Thistle PETG'],
          ['nozzleTemperature:\n', 'spoolMass: 2 kg\nnozzleTemperature:\n'],
        ],
      },
    ],
  },
  {
    nearMiss: 'inner contours with segments four times as long',
    edits: [{ in: house, from: 'innerContour: 20 mm', to: 'innerContour: 80 mm' }],
  },
  {
    nearMiss: 'eight contours',
    edits: [
      { in: hook, below: infill, add: `  innerContour: {pathLength: 98 m, meanSegment: 12 mm, ${bead}}` },
    ],
  },
  {
    nearMiss: 'a wide brim',
    edits: [
      {
        in: hook,
        below: infill,
        add: `  firstLayer: {pathLength: 30 m, meanSegment: 20 mm, ${bead}}\n  topSurface: {pathLength: 6 m, meanSegment: 20 mm, ${bead}}`,
      },
    ],
  },
  {
    nearMiss: 'infill in every third layer',
    edits: [{ in: hook, from: infill, to: infill.replace('0.3 mm', '0.6 mm') }],
  },
  {
    nearMiss: 'contours all alike',
    edits: [{ in: house, from: 'innerContour: 90 %', to: 'innerContour: 75 %' }],
  },
  {
    nearMiss: 'rounding by a quarter',
    edits: [{ in: house, from: 'flow: 0.1 mm3/s', to: 'flow: 0.25 mm3/s' }],
  },
  {
    nearMiss: 'a contour speed of a twentieth',
    edits: [{ in: wren, from: 'value: 150 mm/s, basis', to: 'value: 25 mm/s, basis' }],
  },
  { nearMiss: 'a modest claim', edits: [{ in: wren, from: 'value: 32 mm3/s', to: 'value: 24 mm3/s' }] },
  {
    nearMiss: 'a chamber a little colder than its room',
    edits: [{ in: cloverTrial, below: '  nozzleTemperature: 245 Cel', add: '  chamberTemperature: 18 Cel' }],
  },
  {
    nearMiss: 'the hottest bed that the family bears',
    edits: [{ in: clover, from: '70..80 Cel', to: '70..100 Cel' }],
  },
];

testCases({ slips, nearMisses });

it('finds a ladder in cm3/h: its limit is far below its claim and a colder trial', () => {
  const codes = findingsAfter([{ in: sheet, from: 'commandedFlow [mm3/s]', to: 'commandedFlow [cm3/h]' }]);
  expect(codes.filter((line) => line.includes(daisyTrial) || line.includes(sheet))).toEqual([
    `warning evidence/falling-limit ${daisyTrial} | nozzleTemperature: »230 Cel`,
    `error evidence/readings-changed ${daisyTrial} | »observations:`,
    `warning evidence/short-of-claim ${daisyTrial} | »observations:`,
  ]);
});
