import { clover, cloverTrial, type NearMiss, petg, type Slip, testCases, wren } from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a polymer that must not be extruded',
    edits: [{ in: petg, from: 'feedstock: true', to: 'feedstock: false' }],
    found: [`error safety/feedstock ${clover} | polymer: »PET-G`],
  },
  {
    slip: 'a loud machine',
    edits: [{ in: wren, from: '52 dB[SPL]{A}', to: '82 dB[SPL]{A}' }],
    found: [
      `warning safety/sound-action ${wren} | - {value: »'82 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a level that instructions must state',
    edits: [{ in: wren, from: '52 dB[SPL]{A}', to: '71 dB[SPL]{A}' }],
    found: [
      `note safety/sound-statement ${wren} | - {value: »'71 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a polymer liner in a hot hot end',
    edits: [{ in: wren, from: 'liner: allMetal', to: 'liner: polymer' }],
    found: [
      `error safety/liner-fumes ${wren} | - {value: »290 Cel, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a polymer liner near its limit',
    edits: [
      { in: wren, from: 'liner: allMetal', to: 'liner: polymer' },
      { in: wren, from: 'value: 290 Cel', to: 'value: 260 Cel' },
    ],
    found: [
      `warning safety/liner-near-limit ${wren} | - {value: »260 Cel, basis: claimed, source: plumstead-wren-sheet}`,
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
    found: [`error safety/liner-fumes ${cloverTrial} | nozzleTemperature: »265 Cel`],
  },
  {
    slip: 'an enclosed machine for hot materials with no chamber sensor',
    edits: [
      { in: wren, from: 'sensed: true', to: 'sensed: false' },
      { in: wren, from: 'value: 290 Cel', to: 'value: 300 Cel' },
    ],
    found: [`note safety/unsensed-chamber ${wren} | sensed: »false`],
  },
  {
    slip: 'an enclosed machine that runs styrene polymers with no chamber sensor',
    edits: [
      { in: wren, from: 'sensed: true', to: 'sensed: false' },
      { in: wren, from: 'polymer: PLA', to: 'polymer: PS-HI' },
    ],
    found: [`note safety/unsensed-chamber ${wren} | sensed: »false`],
  },
  {
    slip: 'styrene on an open machine',
    edits: [
      { in: wren, from: 'enclosed: true', to: 'enclosed: false' },
      { in: wren, from: 'sensed: true', to: 'sensed: false' },
      { in: wren, from: 'polymer: PLA', to: 'polymer: PS-HI' },
    ],
    found: [`note safety/ventilation ${wren} | enclosed: »false`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'an enclosed machine for cold materials with no chamber sensor',
    edits: [{ in: wren, from: 'sensed: true', to: 'sensed: false' }],
  },
  {
    nearMiss: 'a quiet machine',
    edits: [{ in: wren, from: '52 dB[SPL]{A}', to: '70 dB[SPL]{A}' }],
  },
  {
    nearMiss: 'a polymer liner that stays cool',
    edits: [
      { in: wren, from: 'liner: allMetal', to: 'liner: polymer' },
      { in: wren, from: 'value: 290 Cel', to: 'value: 250 Cel' },
    ],
  },
];

testCases({ slips, nearMisses });
