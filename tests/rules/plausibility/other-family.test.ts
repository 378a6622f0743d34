import { clover, daisy, type Edit, testCases } from '../edited-sample.ts';

/** The thermal figures of the sample PLA, replaced. */
function daisyWith(softening: string, nozzle: string, bed: string, drying: string): Edit[] {
  const sheet = 'basis: claimed, source: oakhollow-daisy-pla-sheet';
  return [
    { in: daisy, from: 'value: 58 Cel', to: `value: ${softening} Cel` },
    { in: daisy, from: 'value: 200..235 Cel', to: `value: ${nozzle} Cel` },
    { in: daisy, from: 'value: 50..60 Cel', to: `value: ${bed} Cel` },
    {
      in: daisy,
      below: '  - {value: 5 s, basis: assumed, reason: Bench habit}',
      add: `dryingTemperature:\n  - {value: ${drying} Cel, ${sheet}}`,
    },
  ];
}

testCases({
  slips: [
    {
      slip: 'a block of PET-G in a profile of PLA',
      edits: daisyWith('77', '230..255', '70..85', '65'),
      found: [
        `warning plausibility/other-family ${daisy} | polymer: »PLA`,
        `warning plausibility/drying-above-family ${daisy} | - {value: »65 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet}`,
      ],
    },
    {
      slip: 'a drying that only the softening of the profile allows',
      edits: daisyWith('70', '200..235', '50..60', '64'),
      found: [
        `warning plausibility/drying-above-family ${daisy} | - {value: »64 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet}`,
      ],
    },
  ],
  nearMisses: [
    { nearMiss: 'a grade that stands more heat', edits: daisyWith('80', '200..235', '50..65', '60') },
    { nearMiss: 'a grade that foams', edits: daisyWith('58', '195..250', '45..60', '50') },
    { nearMiss: 'a grade that is tough and soft', edits: daisyWith('52', '190..225', '30..55', '45') },
    {
      nearMiss: 'drying just below the softening of the profile, where the family softens higher',
      edits: daisyWith('60', '200..235', '50..60', '58'),
    },
    {
      nearMiss: 'one figure of another polymer, which its own rule judges',
      edits: [{ in: clover, from: '70..80 Cel', to: '45..60 Cel' }],
    },
  ],
});
