import { cloverTrial, daisy, type Edit, testCases, wren } from '../edited-sample.ts';

/** A note in the place of the last line of a file. */
const noteIn = (file: string, concerns: string): Edit => ({
  in: file,
  below: lastLines[file] ?? '',
  add: `fieldNotes:
  - date: '2026-03-01'
    what: It oozes
    effect: Blobs
    concerns: {${concerns}}`,
});

const lastLines: Readonly<Record<string, string>> = {
  [wren]: 'notice: Invented for the tests of this project; belongs to no company.',
  [daisy]: 'notice: Invented for the tests of this project; belongs to no company.',
  [cloverTrial]:
    'notice: Readings drawn by a program for the tests of this project; no bench has run this ladder.',
};

const finding = (file: string, concerns: string) =>
  `warning references/idle-note ${file} | concerns: {${concerns}}`;

testCases({
  slips: [
    {
      slip: 'a flow that the machine never reaches',
      edits: [noteIn(wren, 'aboveFlow: 280 mm3/s')],
      found: [finding(wren, 'aboveFlow: »280 mm3/s')],
    },
    {
      slip: 'a flow in another unit',
      edits: [noteIn(wren, 'aboveFlow: 28 mm3/min')],
      found: [finding(wren, 'aboveFlow: »28 mm3/min')],
    },
    {
      slip: 'a flow that the filament never reaches',
      edits: [noteIn(daisy, 'aboveFlow: 180 mm3/s')],
      found: [finding(daisy, 'aboveFlow: »180 mm3/s')],
    },
    {
      slip: 'a flow that the trial was not run at',
      edits: [noteIn(cloverTrial, 'aboveFlow: 200 mm3/s')],
      found: [finding(cloverTrial, 'aboveFlow: »200 mm3/s')],
    },
    {
      slip: 'a flow that every piece of the trial exceeds',
      edits: [noteIn(cloverTrial, 'aboveFlow: 2 mm3/s')],
      found: [finding(cloverTrial, 'aboveFlow: »2 mm3/s')],
    },
  ],
  nearMisses: [
    {
      nearMiss: 'a flow somewhat above what the sheet claims',
      edits: [noteIn(wren, 'aboveFlow: 45 mm3/s')],
    },
    {
      nearMiss: 'a low flow through a fine nozzle',
      edits: [noteIn(wren, 'nozzle: hs-0.4, aboveFlow: 2 mm3/s')],
    },
    {
      nearMiss: 'a flow of a faster machine',
      edits: [noteIn(daisy, 'aboveFlow: 60 mm3/s')],
    },
    { nearMiss: 'a note about a nozzle', edits: [noteIn(wren, 'nozzle: hs-0.4')] },
  ],
});
