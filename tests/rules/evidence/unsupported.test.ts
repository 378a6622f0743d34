import { testCases } from '../edited-sample.ts';
import { sorrel, sorrelLadder, sorrelWith } from '../second-profiles.ts';

const limit = (value: string, readings = 'e5ee690b75afaf11') =>
  sorrelWith(`meltFlow:
  - value: ${value}
    basis: measured
    evidence: wren-sorrel-pla-230
    readings: ${readings}
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}
`);

/** A ladder that ends before the filament slips. */
const neverReached = sorrelLadder(`  columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}
  rows:
    - [12, 400, 1.197]
    - [14, 400, 1.196]
    - [16, 400, 1.197]
    - [18, 400, 1.196]
    - [20, 400, 1.195]
    - [22, 400, 1.194]
`);

testCases({
  slips: [
    {
      slip: 'a limit above its readings',
      edits: [limit('31 mm3/s'), sorrelLadder()],
      found: [`error evidence/unsupported ${sorrel} | - value: »31 mm3/s`],
    },
    {
      slip: 'an interval that was narrowed',
      edits: [limit('27.9 mm3/s\n    interval: 27.9..28.0 mm3/s'), sorrelLadder()],
      found: [`error evidence/unsupported ${sorrel} | interval: »27.9..28.0 mm3/s`],
    },
    {
      slip: 'a limit above what a ladder has reached',
      edits: [limit('28 mm3/s', 'a30c9f5e56a03765'), neverReached],
      found: [`error evidence/unsupported ${sorrel} | - value: »28 mm3/s`],
    },
    {
      slip: 'a limit and an interval above the readings, which is one mistake',
      edits: [limit('41 mm3/s\n    interval: 40.1..42 mm3/s'), sorrelLadder()],
      found: [`error evidence/unsupported ${sorrel} | - value: »41 mm3/s`],
    },
    {
      slip: 'a property that the method of the trial does not measure',
      edits: [
        sorrelWith('bridgeSpeed:\n  - {value: 40 mm/s, basis: measured, evidence: wren-sorrel-pla-230}\n'),
        sorrelLadder(),
      ],
      found: [
        `error evidence/unsupported ${sorrel} | - {value: 40 mm/s, basis: measured, evidence: »wren-sorrel-pla-230}`,
      ],
    },
    {
      slip: 'a property that no method measures',
      edits: [
        sorrelWith(
          'chamberTemperature:\n  - {value: 20..30 Cel, basis: measured, evidence: wren-sorrel-pla-230}\n',
        ),
        sorrelLadder(),
      ],
      found: [
        `error evidence/unsupported ${sorrel} | - {value: 20..30 Cel, basis: measured, evidence: »wren-sorrel-pla-230}`,
      ],
    },
  ],
  nearMisses: [
    {
      nearMiss: 'a limit below its readings',
      edits: [limit('25 mm3/s\n    interval: 26.7..28.6 mm3/s\n    reason: Worn nozzles'), sorrelLadder()],
    },
    {
      nearMiss: 'a limit below what a ladder has reached',
      edits: [limit('20 mm3/s', 'a30c9f5e56a03765'), neverReached],
    },
  ],
});
