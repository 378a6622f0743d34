import { clover, cloverTrial, type Edit, testCases, wren } from '../edited-sample.ts';
import { sorrel, sorrelWith } from '../second-profiles.ts';

const speedAt = (at: string) =>
  sorrelWith(`contourSpeed:
  - value: 120 mm/s
    basis: assumed
    reason: Bench habit
    at: {${at}}
`);

const notices: Readonly<Record<string, string>> = {
  [wren]: 'notice: Invented for the tests of this project; belongs to no company.',
  [clover]: 'notice: Invented for the tests of this project; belongs to no company.',
  [cloverTrial]:
    'notice: Readings drawn by a program for the tests of this project; no bench has run this ladder.',
};

/** A note with what it concerns. */
const noteIn = (file: string, concerns: string): Edit => ({
  in: file,
  below: notices[file] ?? '',
  add: `fieldNotes:
  - date: '2026-03-01'
    what: It oozes
    effect: Blobs
    concerns: {${concerns}}`,
});

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
    {
      slip: 'a nozzle in a note of a machine that does not have it',
      edits: [noteIn(wren, 'nozzle: hs-0.8')],
      found: [`error references/dangling ${wren} | concerns: {nozzle: »hs-0.8}`],
    },
    {
      slip: 'a nozzle in a note of a trial whose machine does not have it',
      edits: [noteIn(cloverTrial, 'nozzle: hs-0.8')],
      found: [`error references/dangling ${cloverTrial} | concerns: {nozzle: »hs-0.8}`],
    },
    {
      slip: 'a nozzle without its machine in a note of a filament',
      edits: [noteIn(clover, 'nozzle: hs-0.6')],
      found: [`error references/dangling ${clover} | concerns: {nozzle: »hs-0.6}`],
    },
  ],
  nearMisses: [
    { nearMiss: 'a nozzle in a note of its machine', edits: [noteIn(wren, 'nozzle: hs-0.6')] },
    { nearMiss: 'a nozzle in a note of a trial', edits: [noteIn(cloverTrial, 'nozzle: hs-0.6')] },
    { nearMiss: 'a nozzle of the machine', edits: [speedAt('machine: plumstead/wren, nozzle: hs-0.6')] },
  ],
});
