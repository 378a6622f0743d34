import { cloverTrial, type Edit, type NearMiss, type Slip, testCases } from '../edited-sample.ts';
import { trialWith } from '../second-profiles.ts';

const bridges = 'trials/2026/wren-clover-bridges.yaml';

/** Bridges at several speeds, each printed twice, as far as nothing else is given. */
const graded = [
  ...['20, 5', '20, 5', '30, 5', '30, 5', '40, 4', '40, 4', '50, 3', '50, 4'],
  ...['60, 3', '60, 3', '70, 2', '70, 1', '80, 1', '80, 1'],
];

const bridgeLadder = (rows: readonly string[]): Edit =>
  trialWith(
    bridges,
    `method: settingLadder
machine: plumstead/wren
nozzle: hs-0.4
filament: oakhollow/clover-petg
conditions: {nozzleTemperature: 245 Cel, bedTemperature: 75 Cel, ambientTemperature: 22 Cel, fan: 40 %}
acceptedGrade: 4
observations:
  columns: {bridgeSpeed: mm/s, grade: '{count}'}`,
    rows,
  );

const below = '    - [24, 400, 1.040]';

const slips: readonly Slip[] = [
  {
    slip: 'a row that is told twice',
    edits: [{ in: cloverTrial, below, add: below }],
    found: [`warning evidence/repeated-rows ${cloverTrial} | - »[24, 400, 1.040]`],
  },
  {
    slip: 'a block that is pasted once more',
    edits: [
      {
        in: cloverTrial,
        below: '    - [26, 400, 0.985]',
        add: '    - [20, 400, 1.158]\n    - [20, 400, 1.166]\n    - [22, 400, 1.109]\n    - [22, 400, 1.101]',
      },
    ],
    found: [`warning evidence/repeated-rows ${cloverTrial} | - »[20, 400, 1.158]`],
  },
  {
    slip: 'readings that are pasted at other flows',
    edits: [
      {
        in: cloverTrial,
        from: '    - [8, 400, 1.223]\n    - [8, 400, 1.227]\n    - [10, 400, 1.228]\n    - [10, 400, 1.222]\n    - [12, 400, 1.225]\n    - [12, 400, 1.226]\n',
        to: '    - [8, 400, 1.225]\n    - [8, 400, 1.230]\n    - [10, 400, 1.220]\n    - [10, 400, 1.221]\n    - [12, 400, 1.205]\n    - [12, 400, 1.201]\n',
      },
    ],
    found: [`warning evidence/repeated-rows ${cloverTrial} | - »[14, 400, 1.225]`],
  },
  {
    slip: 'a grade that is told once more, where every other speed has two',
    edits: [bridgeLadder(graded.toSpliced(4, 0, '40, 4'))],
    found: [`warning evidence/repeated-rows ${bridges} | - »[40, 4]`],
  },
  {
    slip: 'two rows that are pasted over the two below, so that the speed falls back',
    edits: [bridgeLadder(graded.toSpliced(7, 2, '40, 4', '50, 3'))],
    found: [`warning evidence/repeated-rows ${bridges} | - »[40, 4]`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'two pieces of a flow that weigh the same',
    edits: [{ in: cloverTrial, from: '[24, 400, 1.040]', to: '[24, 400, 1.042]' }],
  },
  {
    nearMiss: 'a third piece of a flow that weighs something else',
    edits: [{ in: cloverTrial, below, add: '    - [24, 400, 1.043]' }],
  },
  { nearMiss: 'two grades of each speed', edits: [bridgeLadder(graded)] },
  {
    nearMiss: 'a third grade that decides between two others',
    edits: [bridgeLadder(graded.toSpliced(8, 0, '50, 4'))],
  },
  {
    nearMiss: 'third grades at both speeds about the limit',
    edits: [bridgeLadder(graded.toSpliced(6, 0, '40, 4').toSpliced(9, 0, '50, 4'))],
  },
  {
    nearMiss: 'two plates that are printed again before the next one',
    edits: [
      bridgeLadder([
        '20, 5',
        '30, 5',
        '40, 4',
        '30, 5',
        '40, 4',
        '50, 4',
        '60, 3',
        '70, 2',
        '80, 1',
        '90, 1',
      ]),
    ],
  },
  {
    nearMiss: 'a third grade like two others at a second speed, too',
    edits: [bridgeLadder(graded.toSpliced(4, 0, '40, 4').toSpliced(9, 0, '60, 3'))],
  },
  {
    nearMiss: 'a second pass that differs in one grade',
    edits: [
      bridgeLadder([
        ...graded.filter((_, index) => index % 2 === 0),
        ...graded.filter((_, index) => index % 2 === 1),
      ]),
    ],
  },
];

testCases({ slips, nearMisses });
