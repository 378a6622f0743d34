import { testCases } from '../edited-sample.ts';
import { sorrel, sorrelWith } from '../second-profiles.ts';

const layerTime = (provenance: string) => sorrelWith(`shortestLayerTime:\n  - {value: 5 s, ${provenance}}\n`);

testCases({
  slips: [
    {
      slip: 'a measured value without its trial',
      edits: [sorrelWith('meltFlow:\n  - value: 20 mm3/s\n    basis: measured\n')],
      found: [`error provenance/missing ${sorrel} | - »value: 20 mm3/s`],
    },
    {
      slip: 'a figure of a sheet that is called measured',
      edits: [
        sorrelWith('meltFlow:\n  - {value: 20 mm3/s, basis: measured, source: oakhollow-daisy-pla-sheet}\n'),
      ],
      found: [
        `error provenance/missing ${sorrel} | - »{value: 20 mm3/s, basis: measured, source: oakhollow-daisy-pla-sheet}`,
      ],
    },
    {
      slip: 'an assumed value without a reason',
      edits: [layerTime('basis: assumed')],
      found: [`error provenance/missing ${sorrel} | - »{value: 5 s, basis: assumed}`],
    },
    {
      slip: 'a claimed value without its source',
      edits: [layerTime('basis: claimed')],
      found: [`error provenance/missing ${sorrel} | - »{value: 5 s, basis: claimed}`],
    },
  ],
  nearMisses: [
    {
      nearMiss: 'a derived value with a reason',
      edits: [layerTime('basis: derived, reason: Mass of the layer over the flow')],
    },
  ],
});
