import { testCases } from '../edited-sample.ts';
import { shelfWith } from '../second-profiles.ts';

testCases({
  slips: [
    {
      slip: 'one id in two files with different endings',
      edits: [shelfWith('', { write: 'jobs/hook.yml', id: 'hook' })],
      found: ['error identity/duplicate-id jobs/hook.yml | id: »hook'],
    },
  ],
  nearMisses: [
    {
      nearMiss: 'the same id of another kind',
      edits: [
        {
          write: 'sources/hook.yaml',
          text: `kind: source
id: hook
type: document
title: A source that shares its id with a job
standing: read
notice: Invented for the tests of this project; belongs to no company.
`,
        },
      ],
    },
    { nearMiss: 'two jobs', edits: [shelfWith()] },
  ],
});
