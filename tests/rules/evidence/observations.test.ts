import { testCases } from '../edited-sample.ts';
import { again, inlineLadder, ladder } from '../second-profiles.ts';

testCases({
  slips: [
    {
      slip: 'readings in the trial and in a file',
      edits: [ladder({ observations: `  file: wren-daisy-pla-230.csv\n${inlineLadder()}` })],
      found: [`error evidence/observations ${again} | »file: wren-daisy-pla-230.csv`],
    },
    {
      slip: 'a file of readings that is not there',
      edits: [ladder({ observations: '  file: wren-daisy-pla-again.csv\n' })],
      found: [`error evidence/observations ${again} | file: »wren-daisy-pla-again.csv`],
    },
  ],
  nearMisses: [
    { nearMiss: 'a file of readings', edits: [ladder({ observations: '  file: wren-daisy-pla-230.csv\n' })] },
    { nearMiss: 'readings in the trial', edits: [ladder()] },
  ],
});
