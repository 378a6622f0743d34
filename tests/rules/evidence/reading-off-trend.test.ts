import { expect, it } from 'vitest';
import { cloverTrial, findingsAfter, type NearMiss, type Slip, testCases } from '../edited-sample.ts';

const sheet = 'trials/2026/wren-daisy-pla-230.csv';

const slips: readonly Slip[] = [
  {
    slip: 'a scale finer than any reading shows',
    edits: [{ in: cloverTrial, from: 'resolution: 0.001 g', to: 'resolution: 0.0001 g' }],
    found: [`warning evidence/scale-digits ${cloverTrial} | scale: {resolution: »0.0001 g}`],
  },
  {
    slip: 'a piece of the plateau that weighs a sixth too little',
    edits: [{ in: cloverTrial, from: '[12, 400, 1.226]', to: '[12, 400, 1.029]' }],
    found: [`warning evidence/reading-off-trend ${cloverTrial} | - »[12, 400, 1.029]`],
  },
  {
    slip: 'a piece of the last step that weighs a fifth too little: its repeat lies on the curve',
    edits: [{ in: cloverTrial, from: '[26, 400, 0.985]', to: '[26, 400, 0.788]' }],
    found: [`warning evidence/reading-off-trend ${cloverTrial} | - »[26, 400, 0.788]`],
  },
  {
    slip: 'a piece fed with another length than the sheet says',
    edits: [{ in: cloverTrial, from: '[8, 400, 1.223]', to: '[8, 350, 1.223]' }],
    found: [`warning evidence/reading-off-trend ${cloverTrial} | - »[8, 350, 1.223]`],
  },
  {
    slip: 'two pieces of different steps',
    edits: [
      { in: cloverTrial, from: '[10, 400, 1.228]', to: '[10, 400, 1.052]' },
      { in: cloverTrial, from: '[20, 400, 1.166]', to: '[20, 400, 1.310]' },
    ],
    found: [
      `warning evidence/reading-off-trend ${cloverTrial} | - »[10, 400, 1.052]`,
      `warning evidence/reading-off-trend ${cloverTrial} | - »[20, 400, 1.310]`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a scale whose step the readings show',
    edits: [{ in: cloverTrial, from: 'resolution: 0.001 g', to: 'resolution: 0.0005 g' }],
  },
  {
    nearMiss: 'a piece that is 6 % light, as unsteady extrusion gives',
    edits: [{ in: cloverTrial, from: '[26, 400, 0.985]', to: '[26, 400, 0.925]' }],
  },
  {
    nearMiss: 'a ladder that falls steeply in all its repeats',
    edits: [
      { in: cloverTrial, from: '[26, 400, 0.979]', to: '[26, 400, 0.715]' },
      { in: cloverTrial, from: '[26, 400, 0.985]', to: '[26, 400, 0.709]' },
    ],
  },
  {
    nearMiss: 'a light piece after the drive has slipped',
    edits: [
      { in: cloverTrial, from: '[26, 400, 0.985]', to: '[26, 400, 0.785]' },
      { in: cloverTrial, from: 'event: halted, commandedFlow: 28', to: 'event: stripped, commandedFlow: 26' },
    ],
  },
];

testCases({ slips, nearMisses });

it('points at the line of the sheet, as serious as the limit that rests on other readings', () => {
  const [finding] = findingsAfter([{ in: sheet, from: '16,400,1.201', to: '16,400,1.391' }]);
  expect(finding).toBe(`error evidence/reading-off-trend ${sheet} | »16,400,1.391`);
});
