import { type NearMiss, type Slip, testCases } from '../edited-sample.ts';
import { sorrel, sorrelWith } from '../second-profiles.ts';

const layerTime = (reason: string) =>
  sorrelWith(`shortestLayerTime:\n  - {value: 8 s, basis: derived, reason: '${reason}'}\n`);

const slips: readonly Slip[] = [
  'Shop estimate: the beads hold',
  'A guess after two bottles',
  'Set by feel',
].map((reason) => ({
  slip: `a derived value that rests on "${reason}"`,
  edits: [layerTime(reason)],
  found: [
    `warning provenance/no-calculation ${sorrel} | - {value: 8 s, basis: »derived, reason: '${reason}'}`,
  ],
}));

const nearMisses: readonly NearMiss[] = [
  'Estimated from the diffusivity and the height of a layer',
  'Mass of the layer over the flow, at our setting of 0.2 mm',
  'First guess 12 s, refined by the heat balance of a layer',
  'Layer volume over the limit; confirms the rule of thumb of 8 s',
].map((reason) => ({
  nearMiss: `a derived value with the calculation "${reason}"`,
  edits: [layerTime(reason)],
}));

testCases({ slips, nearMisses });
