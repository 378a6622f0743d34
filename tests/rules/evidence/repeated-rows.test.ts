import { cloverTrial, type NearMiss, type Slip, testCases } from '../edited-sample.ts';

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
];

testCases({ slips, nearMisses });
