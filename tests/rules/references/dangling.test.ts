import { testCases } from '../edited-sample.ts';
import { sorrel, sorrelWith } from '../second-profiles.ts';

const speedAt = (at: string) =>
  sorrelWith(`contourSpeed:
  - value: 120 mm/s
    basis: assumed
    reason: Bench habit
    at: {${at}}
`);

testCases({
  slips: [
    {
      slip: 'a source that is not there',
      edits: [
        sorrelWith(
          'shortestLayerTime:\n  - {value: 5 s, basis: claimed, source: oakhollow-sorrel-pla-sheet}\n',
        ),
      ],
      found: [
        `error references/dangling ${sorrel} | - {value: 5 s, basis: claimed, source: »oakhollow-sorrel-pla-sheet}`,
      ],
    },
    {
      slip: 'a nozzle that the machine does not have',
      edits: [speedAt('machine: plumstead/wren, nozzle: hs-0.8')],
      found: [`error references/dangling ${sorrel} | at: {machine: plumstead/wren, nozzle: »hs-0.8}`],
    },
    {
      slip: 'a nozzle without its machine',
      edits: [speedAt('nozzle: hs-0.6')],
      found: [`error references/dangling ${sorrel} | at: {nozzle: »hs-0.6}`],
    },
  ],
  nearMisses: [
    { nearMiss: 'a nozzle of the machine', edits: [speedAt('machine: plumstead/wren, nozzle: hs-0.6')] },
  ],
});
