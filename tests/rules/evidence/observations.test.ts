import { sampleTexts } from '../../sample-texts.ts';
import { testCases } from '../edited-sample.ts';
import { again, inlineLadder, ladder } from '../second-profiles.ts';

/** The readings of a run of its own, a few milligrams from those of the sample. */
const ownSheet = (sampleTexts().get('trials/2026/wren-daisy-pla-230.csv') ?? '').replace(
  /[\d.]+$/gm,
  (mass, offset) => (Number(mass) + (Number(offset) % 3 === 0 ? 0.003 : -0.002)).toFixed(3),
);

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
    {
      slip: 'a file of readings that belongs to another trial',
      edits: [ladder({ observations: '  file: wren-daisy-pla-230.csv\n' })],
      found: [`warning identity/copied-readings ${again} | »observations:`],
    },
  ],
  nearMisses: [
    {
      nearMiss: 'a file of readings',
      edits: [
        ladder({ observations: '  file: wren-daisy-pla-again.csv\n' }),
        { write: 'trials/2026/wren-daisy-pla-again.csv', text: ownSheet },
      ],
    },
    { nearMiss: 'readings in the trial', edits: [ladder()] },
  ],
});
