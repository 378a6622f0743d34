import { testCases } from '../edited-sample.ts';
import { ladder, shelfWith, sorrelWith } from '../second-profiles.ts';

const oldTrial = 'trials/2025/wren-daisy-pla-old.yaml';

testCases({
  slips: [
    {
      slip: 'an id that was copied',
      edits: [shelfWith('', { id: 'board' })],
      found: ['error identity/id-path jobs/shelf.yaml | id: »board'],
    },
    {
      slip: 'a misspelled folder of the maker',
      edits: [sorrelWith('', 'filaments/oakholow/sorrel-pla.yaml')],
      found: ['error identity/id-path filaments/oakholow/sorrel-pla.yaml | id: »oakhollow/sorrel-pla'],
    },
    {
      slip: 'a trial in the folder of another year',
      edits: [ladder({ write: oldTrial, date: '2026-01-02' })],
      found: [`error identity/id-path ${oldTrial} | date: »'2026-01-02'`],
    },
  ],
  nearMisses: [
    { nearMiss: 'a job', edits: [shelfWith()] },
    { nearMiss: 'a file that ends with .yml', edits: [shelfWith('', { write: 'jobs/shelf.yml' })] },
    {
      nearMiss: 'a trial in the folder of its year',
      edits: [ladder({ write: oldTrial, date: '2025-12-30' })],
    },
  ],
});
