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
    slip: 'a strand that does not fit the hot end',
    edits: [{ in: clover, from: 'diameter: 1.75 mm', to: 'diameter: 2.85 mm' }],
    found: [`error consistency/strand-mismatch ${cloverTrial} | filament: oakhollow/clover-petg`],
  },
  {
    slip: 'a trial above what the hot end may be set to',
    edits: [{ in: wren, from: 'value: 290 Cel', to: 'value: 240 Cel' }],
    found: [`error consistency/hot-end-limit ${cloverTrial} | nozzleTemperature: 245 Cel`],
  },
  {
    slip: 'a claim above what the hot end may be set to',
    edits: [
      { in: wren, from: 'value: 290 Cel', to: 'value: 245 Cel' },
      { in: wren, from: 'nozzleTemperature: 230 Cel', to: 'nozzleTemperature: 248 Cel' },
    ],
    found: [
      `error consistency/hot-end-limit ${wren} | at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 248 Cel}`,
    ],
  },
  {
    slip: 'a filament that wants a hotter bed than there is',
    edits: [{ in: wren, from: 'value: 100 Cel', to: 'value: 60 Cel' }],
    found: [`warning consistency/bed-limit ${cloverTrial} | filament: oakhollow/clover-petg`],
  },
  {
    slip: 'a bed that is set hotter than it gets',
    edits: [
      { in: wren, from: 'value: 100 Cel', to: 'value: 85 Cel' },
      { in: cloverTrial, from: '  ambientTemperature', to: '  bedTemperature: 90 Cel\n  ambientTemperature' },
    ],
    found: [`warning consistency/bed-limit ${cloverTrial} | bedTemperature: 90 Cel`],
  },
  {
    slip: 'a trial outside of the window of its filament',
    edits: [{ in: clover, from: '230..255 Cel', to: '210..225 Cel' }],
    found: [`warning consistency/trial-outside-window ${cloverTrial} | nozzleTemperature: 245 Cel`],
  },
  {
    slip: 'a spool that is too heavy for the holder',
    edits: [{ in: wren, from: 'spool: {mass: 1 kg}', to: 'spool: {mass: 750 g}' }],
    found: [`warning consistency/spool-holder ${daisy} | spoolMass: 1 kg`],
  },
  {
    slip: 'stale evidence',
    edits: [{ in: cloverTrial, from: 'firmware: 1.3.0', to: 'firmware: 1.2.9' }],
    found: [`warning evidence/stale-firmware ${cloverTrial} | firmware: 1.2.9`],
  },
  {
    slip: 'a machine profile that is older than its trial',
    edits: [{ in: cloverTrial, from: 'firmware: 1.3.0', to: 'firmware: 2.0.0' }],
    found: [`warning evidence/stale-firmware ${cloverTrial} | firmware: 2.0.0`],
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
    found: [`warning evidence/falling-limit ${cloverTrial} | nozzleTemperature: 245 Cel`],
  },
  {
    slip: 'a bed far above the window of the filament',
    edits: [
      { in: wren, from: 'value: 100 Cel', to: 'value: 130 Cel' },
      {
        in: cloverTrial,
        from: '  ambientTemperature',
        to: '  bedTemperature: 120 Cel\n  ambientTemperature',
      },
    ],
    found: [`warning consistency/trial-outside-window ${cloverTrial} | bedTemperature: 120 Cel`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a hot end as hot as its limit',
    edits: [{ in: wren, from: 'value: 290 Cel', to: 'value: 245 Cel' }],
  },
  {
    nearMiss: 'a bed that is just warm enough',
    edits: [{ in: wren, from: 'value: 100 Cel', to: 'value: 70 Cel' }],
  },
  {
    nearMiss: 'a trial a little outside of the window',
    edits: [{ in: clover, from: '230..255 Cel', to: '210..235 Cel' }],
  },
  {
    nearMiss: 'a holder for the spool',
    edits: [{ in: wren, from: 'spool: {mass: 1 kg}', to: 'spool: {mass: 1.2 kg}' }],
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
        ],
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
