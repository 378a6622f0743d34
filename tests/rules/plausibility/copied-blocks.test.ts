import { clover, daisy, type Edit, testCases } from '../edited-sample.ts';

const sheet = 'basis: claimed, source: oakhollow-daisy-pla-sheet';

/** Figures of the sample PET-G in the profile of PLA, under the sheet of the latter. */
function pasted(...figures: readonly (readonly [from: string, to: string])[]): Edit[] {
  return figures.map(([from, to]) => ({ in: daisy, from: `value: ${from}`, to: `value: ${to}` }));
}

/** A chamber for the sample PLA. */
function chamber(window: string): Edit {
  const add = `chamberTemperature:\n  - {value: ${window}, ${sheet}}`;
  return { in: daisy, below: `  - {value: 50..60 Cel, ${sheet}}`, add };
}

testCases({
  slips: [
    {
      slip: 'density, bed and nozzle of another polymer',
      edits: pasted(
        ['1.24 g/cm3', '1.27 g/cm3'],
        ['200..235 Cel', '230..255 Cel'],
        ['50..60 Cel', '70..80 Cel'],
      ),
      found: [
        `warning plausibility/copied-figures ${daisy} | »nozzleTemperature:`,
        `warning plausibility/unusual-bed ${daisy} | - {value: »70..80 Cel, ${sheet}}`,
      ],
    },
    {
      slip: 'a bed window that begins above the softening',
      edits: pasted(['50..60 Cel', '68..75 Cel']),
      found: [`warning plausibility/unusual-bed ${daisy} | - {value: »68..75 Cel, ${sheet}}`],
    },
    {
      slip: 'a chamber close to the softening of the profile',
      edits: [chamber('20..50 Cel')],
      found: [`warning plausibility/hot-chamber ${daisy} | - {value: »20..50 Cel, ${sheet}}`],
    },
  ],
  nearMisses: [
    { nearMiss: 'a bed that may stay cold', edits: pasted(['50..60 Cel', '20..55 Cel']) },
    {
      nearMiss: 'a heat-resistant grade whose bed begins near its softening',
      edits: pasted(['58 Cel', '64 Cel'], ['50..60 Cel', '60..75 Cel']),
    },
    { nearMiss: 'a chamber that is warm', edits: [chamber('20..45 Cel')] },
    {
      nearMiss: 'two figures of another polymer',
      edits: [{ in: clover, from: '1.27 g/cm3', to: '1.24 g/cm3' }],
    },
  ],
});
