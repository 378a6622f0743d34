import { sampleTexts } from '../../sample-texts.ts';
import {
  cloverTrial,
  daisy,
  daisyTrial,
  type NearMiss,
  type Slip,
  testCases,
  wren,
} from '../edited-sample.ts';

/** The rows of the sample, and those of a run of its own, a few milligrams from them. */
const [sampleRows = ''] = /(?: {4}- \[.*\]\n)+/.exec(sampleTexts().get(cloverTrial) ?? '') ?? [];
const otherRows = sampleRows.replaceAll(/[\d.]+(?=\])/g, (mass, place) =>
  (Number(mass) + (Number(place) % 3 === 0 ? 0.003 : -0.002)).toFixed(3),
);

const slips: readonly Slip[] = [
  {
    slip: 'a measured flow of a hot end without what adopting its trial would write',
    edits: [
      {
        in: wren,
        below: '        at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 230 Cel}',
        add: '      - {value: 19 mm3/s, basis: measured, evidence: wren-clover-petg-245, at: {nozzle: hs-0.6, filament: oakhollow/clover-petg, nozzleTemperature: 245 Cel}}',
      },
    ],
    found: [
      `warning evidence/not-adopted ${wren} | - »{value: 19 mm3/s, basis: measured, evidence: wren-clover-petg-245, at: {nozzle: hs-0.6, filament: oakhollow/clover-petg, nozzleTemperature: 245 Cel}}`,
    ],
  },
  {
    slip: 'a scale that is too coarse',
    edits: [{ in: cloverTrial, from: 'scale: {resolution: 0.001 g}', to: 'scale: {resolution: 0.01 g}' }],
    found: [`warning evidence/scale-digits ${cloverTrial} | scale: {resolution: »0.01 g}`],
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
    found: [`warning evidence/unordered-steps ${cloverTrial} | - »[16, 400, 1.221]`],
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
    found: ['error evidence/unordered-steps trials/2026/wren-daisy-pla-230.csv | »16,400,1.201'],
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
    found: [`warning evidence/few-steps ${cloverTrial} | »observations:`],
  },
  {
    slip: 'a value that is not dated like its trial',
    edits: [{ in: daisy, from: "    date: '2026-02-11'", to: "    date: '2026-02-17'" }],
    found: [`warning evidence/other-date ${daisy} | date: »'2026-02-17'`],
  },
  {
    slip: 'a value above its interval',
    edits: [
      { in: wren, from: 'value: 150 mm/s, basis', to: 'value: 150 mm/s, interval: 110..130 mm/s, basis' },
    ],
    found: [
      `error evidence/value-above-interval ${wren} | - {value: »150 mm/s, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'a value far below its interval',
    edits: [
      { in: wren, from: 'value: 150 mm/s, basis', to: 'value: 30 mm/s, interval: 110..130 mm/s, basis' },
    ],
    found: [
      `warning evidence/far-below-interval ${wren} | - {value: »30 mm/s, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'an interval that lost a digit',
    edits: [
      { in: wren, from: 'value: 150 mm/s, basis', to: 'value: 120 mm/s, interval: 11..130 mm/s, basis' },
    ],
    found: [
      `warning evidence/wide-interval ${wren} | - {value: 120 mm/s, interval: »11..130 mm/s, basis: assumed, reason: Bench habit}`,
    ],
  },
  {
    slip: 'a limit far below what its trial supports',
    edits: [{ in: daisy, from: 'value: 26 mm3/s', to: 'value: 2.6 mm3/s' }],
    found: [`warning evidence/far-below-interval ${daisy} | - value: »2.6 mm3/s`],
  },
  {
    slip: 'flows in another unit than those of a sibling',
    edits: [
      {
        in: daisyTrial.replace('.yaml', '.csv'),
        from: 'commandedFlow [mm3/s]',
        to: 'commandedFlow [cm3/min]',
      },
    ],
    found: [
      `warning consistency/claim-below-trials ${wren} | - value: »32 mm3/s`,
      `warning evidence/above-similar-trials ${daisyTrial} | »observations:`,
      `error evidence/readings-changed ${daisyTrial} | »observations:`,
    ],
  },
  {
    slip: 'a halt at a flow that lost its decimal point',
    edits: [{ in: cloverTrial, from: 'commandedFlow: 28 mm3/s', to: 'commandedFlow: 280 mm3/s' }],
    found: [
      `warning evidence/event-outside-ladder ${cloverTrial} | - {event: halted, commandedFlow: »280 mm3/s, note: Clog detection}`,
    ],
  },
  {
    slip: 'stale evidence',
    edits: [{ in: cloverTrial, from: 'firmware: 1.3.0', to: 'firmware: 1.2.9' }],
    found: [`warning evidence/stale-firmware ${cloverTrial} | firmware: »1.2.9`],
  },
  {
    slip: 'a machine profile that is older than its trial',
    edits: [{ in: cloverTrial, from: 'firmware: 1.3.0', to: 'firmware: 2.0.0' }],
    found: [`warning evidence/stale-firmware ${cloverTrial} | firmware: »2.0.0`],
  },
  {
    slip: 'a limit that falls when the nozzle gets hotter',
    edits: [
      {
        copy: cloverTrial,
        to: 'trials/2026/wren-clover-petg-230.yaml',
        edits: [
          ['id: wren-clover-petg-245', 'id: wren-clover-petg-230'],
          ['nozzleTemperature: 245 Cel', 'nozzleTemperature: 230 Cel'],
          ['{event: halted, commandedFlow: 28 mm3/s', '{event: halted, commandedFlow: 70 mm3/s'],
          ['[26, 400, 0.979]', '[52, 400, 0.979]'],
          ['[26, 400, 0.985]', '[52, 400, 0.985]'],
          ['[24, 400, 1.042]', '[48, 400, 1.042]'],
          ['[24, 400, 1.040]', '[48, 400, 1.040]'],
          ['[22, 400, 1.109]', '[44, 400, 1.109]'],
          ['[22, 400, 1.101]', '[44, 400, 1.101]'],
          ['[20, 400, 1.158]', '[40, 400, 1.158]'],
          ['[20, 400, 1.166]', '[40, 400, 1.166]'],
          ['[18, 400, 1.205]', '[36, 400, 1.205]'],
          ['[18, 400, 1.201]', '[36, 400, 1.201]'],
          ['[16, 400, 1.220]', '[32, 400, 1.220]'],
          ['[16, 400, 1.221]', '[32, 400, 1.221]'],
          ['[14, 400, 1.225]', '[28, 400, 1.225]'],
          ['[14, 400, 1.230]', '[28, 400, 1.230]'],
          ['[12, 400, 1.225]', '[24, 400, 1.225]'],
          ['[12, 400, 1.226]', '[24, 400, 1.226]'],
          ['[10, 400, 1.228]', '[20, 400, 1.228]'],
          ['[10, 400, 1.222]', '[20, 400, 1.222]'],
          ['[8, 400, 1.223]', '[16, 400, 1.223]'],
          ['[8, 400, 1.227]', '[16, 400, 1.227]'],
        ],
      },
    ],
    found: [
      `warning evidence/falling-limit ${cloverTrial} | nozzleTemperature: »245 Cel`,
      `warning identity/copied-readings ${cloverTrial} | »observations:`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a scale that steps by 0.002 g',
    edits: [{ in: cloverTrial, from: 'scale: {resolution: 0.001 g}', to: 'scale: {resolution: 0.002 g}' }],
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
    nearMiss: 'a halt at the next step of the ladder',
    edits: [{ in: cloverTrial, from: 'commandedFlow: 28 mm3/s', to: 'commandedFlow: 30 mm3/s' }],
  },
  {
    nearMiss: 'evidence from before a patch',
    edits: [{ in: cloverTrial, from: 'firmware: 1.3.0', to: 'firmware: 1.3.4' }],
  },
  {
    nearMiss: 'the same limit at another temperature',
    edits: [
      {
        copy: cloverTrial,
        to: 'trials/2026/wren-clover-petg-230.yaml',
        edits: [
          ['id: wren-clover-petg-245', 'id: wren-clover-petg-230'],
          ['nozzleTemperature: 245 Cel', 'nozzleTemperature: 230 Cel'],
          [sampleRows, otherRows],
        ],
      },
    ],
  },
];

testCases({ slips, nearMisses });
