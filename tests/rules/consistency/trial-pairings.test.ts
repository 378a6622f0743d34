import {
  clover,
  cloverTrial,
  daisy,
  type Edit,
  hook,
  type NearMiss,
  type Slip,
  testCases,
  wren,
} from '../edited-sample.ts';

/** The sample ladder as if it had printed the sample job. */
const printed: Edit = {
  in: cloverTrial,
  from: 'filament: oakhollow/clover-petg\n',
  to: 'filament: oakhollow/clover-petg\njob: hook\n',
};

const slips: readonly Slip[] = [
  {
    slip: 'a printed job whose layers do not suit the nozzle',
    edits: [printed, { in: cloverTrial, from: 'nozzle: hs-0.6', to: 'nozzle: hs-0.25' }, nozzleOf('0.25')],
    found: [`warning consistency/layer-height ${cloverTrial} | job: »hook`],
  },
  {
    slip: 'a printed job whose lines do not suit the nozzle',
    edits: [printed, { in: cloverTrial, from: 'nozzle: hs-0.6', to: 'nozzle: hs-1.2' }, nozzleOf('1.2')],
    found: [`warning consistency/layer-height ${cloverTrial} | job: »hook`],
  },
  {
    slip: 'a printed job that is taller than its machine',
    edits: [
      printed,
      { in: hook, from: 'layers: 120', to: 'layers: 900' },
      {
        copy: wren,
        to: 'machines/plumstead/heron.yaml',
        edits: [
          ['id: plumstead/wren', 'id: plumstead/heron'],
          ['name: Wren', 'name: Wren Tall'],
          ['z: 242 mm', 'z: 480 mm'],
        ],
      },
    ],
    found: [`warning consistency/job-height ${cloverTrial} | job: »hook`],
  },
  {
    slip: 'a filament that does not fit the hot end',
    edits: [{ in: clover, from: 'diameter: 1.75 mm', to: 'diameter: 2.85 mm' }],
    found: [`error consistency/filament-diameter-mismatch ${cloverTrial} | filament: »oakhollow/clover-petg`],
  },
  {
    slip: 'a trial above what the hot end may be set to',
    edits: [{ in: wren, from: 'value: 290 Cel', to: 'value: 240 Cel' }],
    found: [`error consistency/hot-end-limit ${cloverTrial} | nozzleTemperature: »245 Cel`],
  },
  {
    slip: 'a claim above what the hot end may be set to',
    edits: [
      { in: wren, from: 'value: 290 Cel', to: 'value: 245 Cel' },
      { in: wren, from: 'nozzleTemperature: 230 Cel', to: 'nozzleTemperature: 248 Cel' },
    ],
    found: [
      `error consistency/hot-end-limit ${wren} | at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: »248 Cel}`,
    ],
  },
  {
    slip: 'a filament that needs a hotter bed than there is',
    edits: [{ in: wren, from: 'value: 100 Cel', to: 'value: 60 Cel' }],
    found: [`warning consistency/bed-limit ${cloverTrial} | filament: »oakhollow/clover-petg`],
  },
  {
    slip: 'a bed that is set hotter than it gets',
    edits: [
      { in: wren, from: 'value: 100 Cel', to: 'value: 85 Cel' },
      { in: cloverTrial, from: '  ambientTemperature', to: '  bedTemperature: 90 Cel\n  ambientTemperature' },
    ],
    found: [`warning consistency/bed-limit ${cloverTrial} | bedTemperature: »90 Cel`],
  },
  {
    slip: 'a trial outside of the window of its filament',
    edits: [{ in: clover, from: '230..255 Cel', to: '210..225 Cel' }],
    found: [`warning consistency/trial-outside-window ${cloverTrial} | nozzleTemperature: »245 Cel`],
  },
  {
    slip: 'a spool that is too heavy for the holder',
    edits: [{ in: wren, from: 'spool: {mass: 1 kg}', to: 'spool: {mass: 750 g}' }],
    found: [`note consistency/spool-holder ${daisy} | spoolMass: »1 kg`],
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
    found: [`warning consistency/trial-outside-window ${cloverTrial} | bedTemperature: »120 Cel`],
  },
];

const nearMisses: readonly NearMiss[] = [
  { nearMiss: 'a printed job that suits its nozzle', edits: [printed] },
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
];

testCases({ slips, nearMisses });

/** A further nozzle of the sample machine. */
function nozzleOf(diameter: string): Edit {
  return {
    in: wren,
    below: '      - {id: hs-0.4, diameter: 0.4 mm, material: hardenedSteel}',
    add: `      - {id: hs-${diameter}, diameter: ${diameter} mm, material: hardenedSteel}`,
  };
}
