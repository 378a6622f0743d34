import { testCases } from '../edited-sample.ts';
import { again, inlineLadder, ladder } from '../second-profiles.ts';

const sheet = again.replace('.yaml', '.csv');

testCases({
  slips: [
    {
      slip: 'two digits of a mass swapped',
      edits: [ladder({ observations: inlineLadder('1.193', '1.913') })],
      found: [`error evidence/unreducible ${again} | - »[24, 400, 1.913]`],
    },
    {
      slip: 'a cell of the sheet that is no number',
      edits: [
        ladder({ observations: '  file: wren-daisy-pla-again.csv\n' }),
        {
          write: sheet,
          text: `commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]
16,400,1.197
20,400,1.195
24,400,n/a
28,400,1.131
32,400,1.055
`,
        },
      ],
      found: [`error evidence/unreducible ${sheet} | »24,400,n/a`],
    },
    {
      slip: 'three steps',
      edits: [ladder({ observations: inlineLadder().split('    - [28')[0] ?? '' })],
      found: [
        `error evidence/unreducible ${again} | »columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}`,
      ],
    },
  ],
  nearMisses: [{ nearMiss: 'a ladder of six steps', edits: [ladder()] }],
});
