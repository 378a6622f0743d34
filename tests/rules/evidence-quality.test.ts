import { expect, it } from 'vitest';
import {
  clover,
  cloverTrial,
  daisy,
  findingsAfter,
  type NearMiss,
  type Slip,
  wren,
} from './edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a scale that is too coarse',
    edits: [{ in: cloverTrial, from: 'scale: {resolution: 0.001 g}', to: 'scale: {resolution: 0.01 g}' }],
    found: [`warning evidence/light-samples ${cloverTrial} | scale: {resolution: 0.01 g}`],
  },
  {
    slip: 'flows out of order',
    edits: [
      {
        in: cloverTrial,
        from: '    - [16, 400, 1.221]\n    - [18, 400, 1.205]',
        to: '    - [18, 400, 1.205]\n    - [16, 400, 1.221]',
      },
    ],
    found: [`warning evidence/unordered-steps ${cloverTrial} | - [16, 400, 1.221]`],
  },
  {
    slip: 'flows out of order in a sheet',
    edits: [
      {
        in: 'trials/2026/wren-daisy-pla-230.csv',
        from: '16,400,1.201\n18,400,1.198',
        to: '18,400,1.198\n16,400,1.201',
      },
    ],
    found: ['warning evidence/unordered-steps trials/2026/wren-daisy-pla-230.csv | 16,400,1.201'],
  },
  {
    slip: 'a ladder of five flows',
    edits: [
      { in: cloverTrial, from: '    - [10, 400, 1.228]\n', to: '' },
      { in: cloverTrial, from: '    - [10, 400, 1.222]\n', to: '' },
      { in: cloverTrial, from: '    - [12, 400, 1.225]\n', to: '' },
      { in: cloverTrial, from: '    - [12, 400, 1.226]\n', to: '' },
      { in: cloverTrial, from: '    - [14, 400, 1.225]\n', to: '' },
      { in: cloverTrial, from: '    - [14, 400, 1.230]\n', to: '' },
      { in: cloverTrial, from: '    - [18, 400, 1.205]\n', to: '' },
      { in: cloverTrial, from: '    - [18, 400, 1.201]\n', to: '' },
      { in: cloverTrial, from: '    - [26, 400, 0.979]\n', to: '' },
      { in: cloverTrial, from: '    - [26, 400, 0.985]\n', to: '' },
    ],
    found: [`warning evidence/few-steps ${cloverTrial} | observations:`],
  },
  {
    slip: 'a value that is not dated like its trial',
    edits: [{ in: daisy, from: '    date: 2026-02-11', to: '    date: 2026-02-17' }],
    found: [`warning evidence/other-date ${daisy} | date: 2026-02-17`],
  },
  {
    slip: 'a value above its interval',
    edits: [
      { in: wren, from: 'value: 150 mm/s, basis', to: 'value: 150 mm/s, interval: 110..130 mm/s, basis' },
    ],
    found: [
      `error evidence/value-above-interval ${wren} | - {value: 150 mm/s, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'a value far below its interval',
    edits: [
      { in: wren, from: 'value: 150 mm/s, basis', to: 'value: 15 mm/s, interval: 110..130 mm/s, basis' },
    ],
    found: [
      `warning evidence/far-below ${wren} | - {value: 15 mm/s, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'an interval that lost a digit',
    edits: [
      { in: wren, from: 'value: 150 mm/s, basis', to: 'value: 120 mm/s, interval: 11..130 mm/s, basis' },
    ],
    found: [
      `warning evidence/wide-interval ${wren} | - {value: 120 mm/s, interval: 11..130 mm/s, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'a limit far above those of its siblings',
    edits: [
      {
        in: clover,
        below: '  - {value: 8 s, basis: assumed, reason: Bench habit}',
        add: 'meltFlow:\n  - value: 6 mm3/s\n    basis: measured\n    evidence: wren-clover-petg-245\n    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}\n  - value: 19 mm3/s\n    basis: measured\n    evidence: wren-clover-petg-245\n    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}',
      },
    ],
    found: [`warning evidence/above-siblings ${clover} | - value: 19 mm3/s`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a scale that is just fine enough',
    edits: [{ in: cloverTrial, from: 'scale: {resolution: 0.001 g}', to: 'scale: {resolution: 0.004 g}' }],
  },
  {
    nearMiss: 'a second pass from the lowest flow',
    edits: [
      {
        in: cloverTrial,
        from: '    - [26, 400, 0.985]',
        to: '    - [26, 400, 0.985]\n    - [8, 400, 1.226]\n    - [16, 400, 1.222]',
      },
    ],
  },
  {
    nearMiss: 'six flows',
    edits: [
      { in: cloverTrial, from: '    - [10, 400, 1.228]\n', to: '' },
      { in: cloverTrial, from: '    - [10, 400, 1.222]\n', to: '' },
      { in: cloverTrial, from: '    - [12, 400, 1.225]\n', to: '' },
      { in: cloverTrial, from: '    - [12, 400, 1.226]\n', to: '' },
      { in: cloverTrial, from: '    - [14, 400, 1.225]\n', to: '' },
      { in: cloverTrial, from: '    - [14, 400, 1.230]\n', to: '' },
      { in: cloverTrial, from: '    - [26, 400, 0.979]\n', to: '' },
      { in: cloverTrial, from: '    - [26, 400, 0.985]\n', to: '' },
    ],
  },
  {
    nearMiss: 'a cautious value',
    edits: [
      { in: wren, from: 'value: 150 mm/s, basis', to: 'value: 100 mm/s, interval: 110..130 mm/s, basis' },
    ],
  },
  {
    nearMiss: 'a limit near those of its siblings',
    edits: [
      {
        in: clover,
        below: '  - {value: 8 s, basis: assumed, reason: Bench habit}',
        add: 'meltFlow:\n  - value: 16 mm3/s\n    basis: measured\n    evidence: wren-clover-petg-245\n    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}\n  - value: 19 mm3/s\n    basis: measured\n    evidence: wren-clover-petg-245\n    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}',
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
