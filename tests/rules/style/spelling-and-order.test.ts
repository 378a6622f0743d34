import { daisy, hook, type NearMiss, petg, type Slip, testCases } from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'keys in another order than the schema',
    edits: [{ in: hook, from: 'version: 1.0.0\nname: Coat hook', to: 'name: Coat hook\nversion: 1.0.0' }],
    found: [`note style/key-order ${hook} | »version: 1.0.0`],
  },
  {
    slip: 'a unit as people type it',
    edits: [{ in: petg, from: '75..85 Cel', to: '75..85 °C' }],
    found: [
      `note style/unit-spelling ${petg} | - {value: »75..85 °C, basis: published, source: invented-plastics-tables}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a comment between two keys',
    edits: [{ in: hook, from: 'version: 1.0.0\n', to: 'version: 1.0.0\n# For the foyer.\n' }],
  },
  {
    nearMiss: 'a unit that is not the usual one of its dimension',
    edits: [{ in: daisy, from: 'spoolMass: 1 kg', to: 'spoolMass: 1000 g' }],
  },
];

testCases({ slips, nearMisses });
