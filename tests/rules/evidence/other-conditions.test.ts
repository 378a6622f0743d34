import { testCases } from '../edited-sample.ts';
import { sorrel, sorrelLadder, sorrelWith } from '../second-profiles.ts';

const limit = (at: string) =>
  sorrelWith(`meltFlow:
  - value: 27 mm3/s
    interval: 26.7..28.6 mm3/s
    basis: measured
    evidence: wren-sorrel-pla-230
    readings: e5ee690b75afaf11
${at}`);

testCases({
  slips: [
    {
      slip: 'a trial of another filament',
      edits: [
        sorrelWith('meltFlow:\n  - {value: 20 mm3/s, basis: measured, evidence: wren-daisy-pla-215}\n'),
      ],
      found: [
        `error evidence/other-conditions ${sorrel} | - {value: 20 mm3/s, basis: measured, evidence: »wren-daisy-pla-215}`,
      ],
    },
    {
      slip: 'another nozzle than that of the trial',
      edits: [
        limit('    at: {machine: plumstead/wren, nozzle: hs-0.4, nozzleTemperature: 230 Cel}\n'),
        sorrelLadder(),
      ],
      found: [`error evidence/other-conditions ${sorrel} | evidence: »wren-sorrel-pla-230`],
    },
    {
      slip: 'another temperature than that of the trial',
      edits: [
        limit('    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 240 Cel}\n'),
        sorrelLadder(),
      ],
      found: [`error evidence/other-conditions ${sorrel} | evidence: »wren-sorrel-pla-230`],
    },
    {
      slip: 'another polymer than that of the trial',
      edits: [
        limit(
          '    at: {machine: plumstead/wren, nozzle: hs-0.6, polymer: PET-G, nozzleTemperature: 230 Cel}\n',
        ),
        sorrelLadder(),
      ],
      found: [
        `error evidence/other-conditions ${sorrel} | at: {machine: plumstead/wren, nozzle: hs-0.6, polymer: »PET-G, nozzleTemperature: 230 Cel}`,
      ],
    },
    {
      slip: 'an acceleration that the trial does not tell',
      edits: [
        limit(
          '    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel, acceleration: 5000 mm/s2}\n',
        ),
        sorrelLadder(),
      ],
      found: [
        `error evidence/other-conditions ${sorrel} | at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel, acceleration: »5000 mm/s2}`,
      ],
    },
    {
      slip: 'no conditions',
      edits: [limit(''), sorrelLadder()],
      found: [`error evidence/missing-condition ${sorrel} | - »value: 27 mm3/s`],
    },
    {
      slip: 'one condition left out',
      edits: [limit('    at: {machine: plumstead/wren, nozzle: hs-0.6}\n'), sorrelLadder()],
      found: [`error evidence/missing-condition ${sorrel} | »at: {machine: plumstead/wren, nozzle: hs-0.6}`],
    },
  ],
  nearMisses: [
    {
      nearMiss: 'the conditions of the trial',
      edits: [
        limit('    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}\n'),
        sorrelLadder(),
      ],
    },
    {
      nearMiss: 'the polymer of the trial besides',
      edits: [
        limit(
          '    at: {machine: plumstead/wren, nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 230 Cel}\n',
        ),
        sorrelLadder(),
      ],
    },
  ],
});
