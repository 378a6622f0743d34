import { expect, it } from 'vitest';
import { cloverTrial, daisy, findingsAfter, type NearMiss, type Slip, wren } from './edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a heater that cannot melt the claimed flow',
    edits: [{ in: wren, from: 'value: 50 W', to: 'value: 12 W' }],
    found: [`error plausibility/heater-power ${wren} | - value: 32 mm3/s`],
  },
  {
    slip: 'a melt zone that leaves the core hard',
    edits: [{ in: wren, from: 'value: 24 mm,', to: 'value: 3 mm,' }],
    found: [
      `warning plausibility/melt-zone ${daisy} | - value: 26 mm3/s`,
      `warning plausibility/melt-zone ${wren} | - value: 32 mm3/s`,
    ],
  },
  {
    slip: 'a flow that no drive pushes',
    edits: [
      { in: wren, from: 'value: 32 mm3/s', to: 'value: 150 mm3/s' },
      { in: wren, from: 'value: 50 W', to: 'value: 100 W' },
      { in: wren, from: 'polymer: PLA, nozzleTemperature', to: 'nozzleTemperature' },
    ],
    found: [`warning plausibility/strand-feed ${wren} | - value: 150 mm3/s`],
  },
  {
    slip: 'a speed that the bed is too short for',
    edits: [{ in: wren, from: 'value: 10000 mm/s2', to: 'value: 700 mm/s2' }],
    found: [
      `warning plausibility/run-up ${wren} | - {value: 500 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a contour faster than the machine',
    edits: [{ in: wren, from: 'value: 150 mm/s,', to: 'value: 700 mm/s,' }],
    found: [
      `error consistency/contour-above-top ${wren} | - {value: 700 mm/s, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'a speed that no path can be printed at',
    edits: [{ in: wren, from: 'value: 500 mm/s,', to: 'value: 1600 mm/s,' }],
    found: [
      `note consistency/claimed-flow ${wren} | - {value: 1600 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a nozzle whose id says another diameter',
    edits: [{ in: wren, from: 'hs-0.4, diameter: 0.4 mm', to: 'hs-0.4, diameter: 0.5 mm' }],
    found: [
      `error consistency/nozzle-id ${wren} | - {id: hs-0.4, diameter: 0.5 mm, material: hardenedSteel}`,
    ],
  },
  {
    slip: 'a heated chamber without walls',
    edits: [{ in: wren, from: '  enclosed: true\n  heated: false', to: '  enclosed: false\n  heated: true' }],
    found: [`error consistency/chamber ${wren} | heated: true`],
  },
  {
    slip: 'a sensor that the chamber does not know of',
    edits: [
      { in: wren, from: '  sensed: true', to: '  sensed: false' },
      { in: wren, below: 'spool: {mass: 1 kg}', add: 'sensors: [chamberTemperature]' },
    ],
    found: [`error consistency/chamber ${wren} | sensed: false`],
  },
  {
    slip: 'a fixed dryer without its temperature',
    edits: [{ in: wren, below: '  sensed: true', add: 'dryer: {setting: fixed, range: 40..70 Cel}' }],
    found: [`error consistency/dryer-setting ${wren} | dryer: {setting: fixed, range: 40..70 Cel}`],
  },
  {
    slip: 'a fixed dryer that fuses a spool of its trials',
    edits: [{ in: wren, below: '  sensed: true', add: 'dryer: {setting: fixed, temperature: 65 Cel}' }],
    found: [`error consistency/dryer-too-hot ${wren} | dryer: {setting: fixed, temperature: 65 Cel}`],
  },
  {
    slip: 'an adjustable dryer that is never cold enough',
    edits: [{ in: wren, below: '  sensed: true', add: 'dryer: {setting: adjustable, range: 60..90 Cel}' }],
    found: [`error consistency/dryer-too-hot ${wren} | dryer: {setting: adjustable, range: 60..90 Cel}`],
  },
  {
    slip: 'a loud machine',
    edits: [
      {
        in: wren,
        below: 'spool: {mass: 1 kg}',
        add: "soundLevel:\n  - {value: '82 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}",
      },
    ],
    found: [
      `warning safety/sound-action ${wren} | - {value: '82 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a level that instructions must state',
    edits: [
      {
        in: wren,
        below: 'spool: {mass: 1 kg}',
        add: "soundLevel:\n  - {value: '71 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}",
      },
    ],
    found: [
      `note safety/sound-statement ${wren} | - {value: '71 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a polymer liner in a hot hot end',
    edits: [{ in: wren, from: 'liner: allMetal', to: 'liner: polymer' }],
    found: [
      `error safety/liner-fumes ${wren} | - {value: 290 Cel, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a polymer liner near its limit',
    edits: [
      { in: wren, from: 'liner: allMetal', to: 'liner: polymer' },
      { in: wren, from: 'value: 290 Cel', to: 'value: 260 Cel' },
    ],
    found: [
      `warning safety/liner-near-limit ${wren} | - {value: 260 Cel, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a trial above what the liner bears',
    edits: [
      { in: wren, from: 'liner: allMetal', to: 'liner: polymer' },
      {
        in: wren,
        from: '    temperatureLimit:\n      - {value: 290 Cel, basis: claimed, source: plumstead-wren-sheet}\n',
        to: '',
      },
      { in: cloverTrial, from: 'nozzleTemperature: 245 Cel', to: 'nozzleTemperature: 265 Cel' },
    ],
    found: [`error safety/liner-fumes ${cloverTrial} | nozzleTemperature: 265 Cel`],
  },
  {
    slip: 'an enclosed machine for hot materials with no chamber sensor',
    edits: [
      { in: wren, from: 'sensed: true', to: 'sensed: false' },
      { in: wren, from: 'value: 290 Cel', to: 'value: 300 Cel' },
    ],
    found: [`warning safety/unsensed-chamber ${wren} | sensed: false`],
  },
  {
    slip: 'an enclosed machine that runs styrene polymers with no chamber sensor',
    edits: [
      { in: wren, from: 'sensed: true', to: 'sensed: false' },
      { in: wren, from: 'polymer: PLA', to: 'polymer: PS-HI' },
    ],
    found: [`warning safety/unsensed-chamber ${wren} | sensed: false`],
  },
  {
    slip: 'styrene on an open machine',
    edits: [
      { in: wren, from: 'enclosed: true', to: 'enclosed: false' },
      { in: wren, from: 'polymer: PLA', to: 'polymer: PS-HI' },
    ],
    found: [`note safety/ventilation ${wren} | enclosed: false`],
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
      `error consistency/foreign-condition ${wren} | - {value: 20 mm3/s, basis: claimed, source: plumstead-wren-sheet, at: {nozzle: hs-0.6}}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a small heater that is just enough',
    edits: [{ in: wren, from: 'value: 50 W', to: 'value: 15 W' }],
  },
  {
    nearMiss: 'a short melt zone that softens the core',
    edits: [{ in: wren, from: 'value: 24 mm,', to: 'value: 5 mm,' }],
  },
  {
    nearMiss: 'a fast strand that drives still push',
    edits: [
      { in: wren, from: 'value: 32 mm3/s', to: 'value: 140 mm3/s' },
      { in: wren, from: 'value: 50 W', to: 'value: 100 W' },
      { in: wren, from: 'polymer: PLA, nozzleTemperature', to: 'nozzleTemperature' },
    ],
  },
  {
    nearMiss: 'a run-up as long as the bed',
    edits: [
      { in: wren, from: 'value: 10000 mm/s2', to: 'value: 1800 mm/s2' },
      { in: wren, from: 'x: 220 mm, y: 220 mm', to: 'x: 100 mm, y: 100 mm' },
    ],
  },
  {
    nearMiss: 'an open machine for cold materials',
    edits: [
      { in: wren, from: 'enclosed: true', to: 'enclosed: false' },
      { in: wren, from: 'sensed: true', to: 'sensed: false' },
    ],
  },
  {
    nearMiss: 'an enclosed machine for cold materials with no chamber sensor',
    edits: [{ in: wren, from: 'sensed: true', to: 'sensed: false' }],
  },
  {
    nearMiss: 'an adjustable dryer that can be set cold enough',
    edits: [{ in: wren, below: '  sensed: true', add: 'dryer: {setting: adjustable, range: 40..90 Cel}' }],
  },
  {
    nearMiss: 'a quiet machine',
    edits: [
      {
        in: wren,
        below: 'spool: {mass: 1 kg}',
        add: "soundLevel:\n  - {value: '70 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}",
      },
    ],
  },
  {
    nearMiss: 'a polymer liner that stays cool',
    edits: [
      { in: wren, from: 'liner: allMetal', to: 'liner: polymer' },
      { in: wren, from: 'value: 290 Cel', to: 'value: 250 Cel' },
    ],
  },
  {
    nearMiss: 'a nozzle whose id tells no diameter',
    edits: [{ in: wren, from: 'id: hs-0.4, diameter: 0.4 mm', to: 'id: hs-4, diameter: 0.5 mm' }],
  },
];

it.each(slips)('finds $slip', ({ edits, found }) => {
  expect(findingsAfter(edits)).toEqual(found);
});

it.each(nearMisses)('accepts $nearMiss', ({ edits }) => {
  expect(findingsAfter(edits)).toEqual([]);
});
