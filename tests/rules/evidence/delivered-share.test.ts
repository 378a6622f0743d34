import { clover, cloverTrial, daisyTrial, type NearMiss, type Slip, testCases } from '../edited-sample.ts';

const survey = (diameter: string) => ({
  write: 'trials/2026/clover-diameter.yaml',
  text: `kind: trial
id: clover-diameter
method: diameterSurvey
origin: simulated
date: '2026-02-11'
filament: oakhollow/clover-petg
batch: 26-0002
conditions: {ambientTemperature: 21 Cel}
gauge: {resolution: 0.01 mm, accuracy: 0.02 mm}
observations:
  columns: {position: mm, firstDiameter: mm, secondDiameter: mm}
  rows:
${[0, 500, 1000, 1500, 2000, 2500].map((at, index) => `    - [${at}, ${(Number(diameter) + (index % 2) / 100).toFixed(2)}, ${(Number(diameter) - (index % 3) / 100).toFixed(2)}]`).join('\n')}
notice: Invented for a test.
`,
});

const thinStrand = { in: clover, from: 'value: 1.27 g/cm3', to: 'value: 1.23 g/cm3' };

const slips: readonly Slip[] = [
  {
    slip: 'a survey of the strand that the readings contradict',
    edits: [survey('1.66')],
    found: [`warning evidence/unusual-delivery ${cloverTrial} | »observations:`],
  },
  {
    slip: 'one batch under two filaments',
    edits: [{ in: cloverTrial, from: 'batch: 26-0002', to: 'batch: 26-0001' }],
    found: [`warning identity/shared-batch ${cloverTrial} | batch: »26-0001`],
  },
  {
    slip: 'a second ladder of the same spool that gives a tenth less',
    edits: [
      {
        copy: daisyTrial,
        to: 'trials/2026/wren-daisy-pla-230-again.yaml',
        edits: [
          ['id: wren-daisy-pla-230', 'id: wren-daisy-pla-230-again'],
          ['file: wren-daisy-pla-230.csv', 'file: wren-daisy-pla-230-again.csv'],
        ],
      },
      {
        write: 'trials/2026/wren-daisy-pla-230-again.csv',
        text: `commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]
13.5,400,1.196
15.5,400,1.193
17.5,400,1.198
19.5,400,1.194
21.5,400,1.195
23.5,400,1.188
25.5,400,1.157
27.5,400,1.103
29.5,400,1.041
31.5,400,0.974
`,
      },
    ],
    found: ['warning evidence/disagreeing-trials trials/2026/wren-daisy-pla-230-again.yaml | »observations:'],
  },
];

const nearMisses: readonly NearMiss[] = [
  { nearMiss: 'a density at the other end of the family', edits: [thinStrand] },
  { nearMiss: 'a strand that is as thin as its survey says', edits: [survey('1.74')] },
];

testCases({ slips, nearMisses });
