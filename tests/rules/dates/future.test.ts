import { testCases } from '../edited-sample.ts';
import { shelf, shelfWith } from '../second-profiles.ts';

const noteOf = (date: string) =>
  shelfWith(`fieldNotes:\n  - {date: '${date}', what: It fell down., effect: The hook broke.}\n`);

testCases({
  slips: [
    {
      slip: 'a note of tomorrow',
      edits: [noteOf('2026-06-02')],
      found: [
        `error dates/future ${shelf} | - {date: »'2026-06-02', what: It fell down., effect: The hook broke.}`,
      ],
    },
  ],
  nearMisses: [{ nearMiss: 'a note of today', edits: [noteOf('2026-06-01')] }],
});
