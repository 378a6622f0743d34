import { clover, daisy, testCases, wren } from '../edited-sample.ts';
import { sorrel, sorrelWith } from '../second-profiles.ts';

const source = (id: string, from: string, where = clover) => ({
  in: where,
  from,
  to: from.replace(/\S+sheet/, id),
});

const cloverSheet = 'sources/oakhollow-clover-petg-sheet.yaml';

testCases({
  slips: [
    {
      slip: 'a sheet whose title names another product of the maker',
      edits: [{ in: cloverSheet, from: 'title: Clover PETG', to: 'title: Daisy PLA' }],
      found: [`warning provenance/other-product ${clover} | sheet: »oakhollow-clover-petg-sheet`],
    },
    {
      slip: 'a sheet of another maker',
      edits: [{ in: cloverSheet, from: '{literal: Oakhollow}', to: '{literal: Plumstead}' }],
      found: [`error provenance/other-maker ${clover} | sheet: »oakhollow-clover-petg-sheet`],
    },
    {
      slip: 'a sheet about filament of another diameter',
      edits: [{ in: cloverSheet, from: 'title: Clover PETG', to: 'title: Clover PETG 2.85' }],
      found: [`warning provenance/other-product ${clover} | sheet: »oakhollow-clover-petg-sheet`],
    },
    {
      slip: 'a value from the sheet of another maker',
      edits: [
        source('plumstead-wren-sheet', '1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet'),
      ],
      found: [
        `error provenance/other-maker ${clover} | - {value: 1.27 g/cm3, basis: claimed, source: »plumstead-wren-sheet}`,
      ],
    },
    {
      slip: 'a value from the sheet of another product of the maker',
      edits: [
        source(
          'oakhollow-daisy-pla-sheet',
          '1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet',
        ),
      ],
      found: [
        `warning provenance/other-product ${clover} | - {value: 1.27 g/cm3, basis: claimed, source: »oakhollow-daisy-pla-sheet}`,
      ],
    },
    {
      slip: 'a machine with a value from the sheet of a filament',
      edits: [
        source('oakhollow-daisy-pla-sheet', '290 Cel, basis: claimed, source: plumstead-wren-sheet', wren),
      ],
      found: [
        `error provenance/other-maker ${wren} | - {value: 290 Cel, basis: claimed, source: »oakhollow-daisy-pla-sheet}`,
      ],
    },
    {
      slip: 'a published value from a page of the maker that is not the sheet',
      edits: [
        {
          write: 'sources/oakhollow-page.yaml',
          text: `kind: source
id: oakhollow-page
type: webpage
title: How we dry
author: [{literal: OAKHOLLOW}]
accessed: {date-parts: [[2026, 1, 3]]}
standing: read
notice: Invented for the tests of this project; belongs to no company.
`,
        },
        {
          in: daisy,
          from: '58 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet',
          to: '58 Cel, basis: published, source: oakhollow-page',
        },
      ],
      found: [
        `error provenance/own-sheet ${daisy} | - {value: 58 Cel, basis: »published, source: oakhollow-page}`,
      ],
    },
  ],
  nearMisses: [
    {
      nearMiss: 'a sheet about both diameters, by a test house',
      edits: [
        { in: cloverSheet, from: 'title: Clover PETG', to: 'title: Clover PETG 1.75 and 2.85' },
        { in: cloverSheet, from: '{literal: Oakhollow}', to: '{literal: Bench laboratory}' },
      ],
    },
    {
      nearMiss: 'a sheet with the number of its edition',
      edits: [{ in: cloverSheet, from: 'title: Clover PETG', to: 'title: Clover PETG 3.0' }],
    },
    { nearMiss: 'one sheet for two colours of a plastic', edits: [sorrelWith('')] },
    {
      nearMiss: 'a value from the sheet of another product that the conditions name',
      edits: [
        {
          in: wren,
          from: 'at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 230 Cel}',
          to: 'at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 230 Cel}\n      - value: 25 mm3/s\n        basis: claimed\n        source: oakhollow-daisy-pla-sheet\n        at: {nozzle: hs-0.6, filament: oakhollow/daisy-pla, nozzleTemperature: 230 Cel}',
        },
      ],
    },
    {
      nearMiss: 'a published value from a handbook',
      edits: [
        {
          in: daisy,
          from: '58 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet',
          to: '58 Cel, basis: published, source: invented-plastics-tables',
        },
      ],
    },
    {
      nearMiss: 'a value of a second colour from the sheet of the first',
      edits: [
        {
          write: sorrel,
          text: sorrelText().replace('sheet: oakhollow-daisy-pla-sheet', 'sheet: oakhollow-sorrel-pla-sheet'),
        },
        {
          copy: 'sources/oakhollow-daisy-pla-sheet.yaml',
          to: 'sources/oakhollow-sorrel-pla-sheet.yaml',
          edits: [
            ['oakhollow-daisy-pla-sheet', 'oakhollow-sorrel-pla-sheet'],
            ['Daisy', 'Sorrel'],
          ],
        },
      ],
    },
  ],
});

function sorrelText(): string {
  const edit = sorrelWith('');
  return 'text' in edit ? edit.text : '';
}
