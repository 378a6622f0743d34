import { clover, type NearMiss, petg, type Slip, testCases } from '../edited-sample.ts';

const glass = '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}';
const pp = 'polymers/PP.yaml';
const ppMelting = '  - {value: 160..175 Cel, basis: published, source: invented-plastics-tables}';
const rows = (text: string) => text.replaceAll('%', 'basis: published, source: invented-plastics-tables');

const slips: readonly Slip[] = [
  {
    slip: 'a diffusivity that no plastic has',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'specificHeatSolid:\n  - {value: 1.0..1.1 J/g/K, basis: published, source: invented-plastics-tables}\nthermalConductivity:\n  - {value: 0.48..0.52 W/m/K, basis: published, source: invented-plastics-tables}',
      },
    ],
    found: [`warning plausibility/diffusivity ${petg} | »thermalConductivity:`],
  },
  {
    slip: 'a range whose lower end lost a digit',
    edits: [{ in: pp, from: '-20..-5 Cel', to: '-95..-5 Cel' }],
    found: [`warning plausibility/wide-range ${pp} | ${rows('- {value: »-95..-5 Cel, %}')}`],
  },
  {
    slip: 'a glass transition of a hard amorphous family that ends at that of another',
    edits: [{ in: petg, from: '75..85 Cel', to: '75..130 Cel' }],
    found: [`warning plausibility/wide-range ${petg} | ${rows('- {value: »75..130 Cel, %}')}`],
  },
  {
    slip: 'a density with two digits exchanged',
    edits: [{ in: petg, from: '1.25..1.30 g/cm3', to: '1.25..1.80 g/cm3' }],
    found: [`warning plausibility/wide-range ${petg} | ${rows('- {value: »1.25..1.80 g/cm3, %}')}`],
  },
  {
    slip: 'a melting whose lower end lost a digit',
    edits: [{ in: pp, from: '160..175 Cel', to: '75..175 Cel' }],
    found: [`warning plausibility/wide-range ${pp} | ${rows('- {value: »75..175 Cel, %}')}`],
  },
  {
    slip: 'a melting that does not go with its glass transition',
    edits: [{ in: petg, below: glass, add: rows('melting:\n  - {value: 90..120 Cel, %}') }],
    found: [`warning plausibility/transition-ratio ${petg} | ${rows('- {value: »75..85 Cel, %}')}`],
  },
  {
    slip: 'a decomposition in °F',
    edits: [{ in: petg, below: glass, add: rows('decomposition:\n  - {value: 572..608 Cel, %}') }],
    found: [`warning plausibility/late-decomposition ${petg} | ${rows('- {value: »572..608 Cel, %}')}`],
  },
  {
    slip: 'a drying that melts what it dries',
    edits: [{ in: pp, below: ppMelting, add: rows('dryingTemperature:\n  - {value: 120..151 Cel, %}') }],
    found: [`warning plausibility/drying-near-melt ${pp} | ${rows('- {value: »120..151 Cel, %}')}`],
  },
  {
    slip: 'a moisture that lost a digit',
    edits: [
      {
        in: petg,
        below: glass,
        add: 'moistureEquilibrium:\n  - {value: 0.01..0.02 %, basis: published, source: invented-plastics-tables}\nmoistureSaturated:\n  - {value: 0.4..0.6 %, basis: published, source: invented-plastics-tables}',
      },
    ],
    found: [
      `warning plausibility/moisture-ratio ${petg} | - {value: »0.01..0.02 %, basis: published, source: invented-plastics-tables}`,
    ],
  },
  {
    slip: 'drying for minutes that are meant as hours',
    edits: [
      {
        in: clover,
        below: '  - {value: 8 s, basis: assumed, reason: Bench habit}',
        add: 'dryingTime:\n  - {value: 40 min, basis: claimed, source: oakhollow-clover-petg-sheet}',
      },
    ],
    found: [
      `warning plausibility/drying-time ${clover} | - {value: »40 min, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a glass transition of many grades',
    edits: [{ in: petg, from: '75..85 Cel', to: '70..110 Cel' }],
  },
  {
    nearMiss: 'a range up to a figure',
    edits: [
      {
        in: petg,
        below: glass,
        add: 'moistureEquilibrium:\n  - {value: 0..0.2 %, basis: published, source: invented-plastics-tables}',
      },
    ],
  },
  {
    nearMiss: 'a chain whose transitions are close',
    edits: [{ in: petg, below: glass, add: rows('melting:\n  - {value: 135..145 Cel, %}') }],
  },
  {
    nearMiss: 'a decomposition 200 K above the limit',
    edits: [{ in: petg, below: glass, add: rows('decomposition:\n  - {value: 470..490 Cel, %}') }],
  },
  {
    nearMiss: 'a hot drying, 60 K below the nozzle',
    edits: [{ in: pp, below: ppMelting, add: rows('dryingTemperature:\n  - {value: 100..150 Cel, %}') }],
  },
  {
    nearMiss: 'a tenth of the saturation',
    edits: [
      {
        in: petg,
        below: glass,
        add: 'moistureEquilibrium:\n  - {value: 0.02..0.06 %, basis: published, source: invented-plastics-tables}\nmoistureSaturated:\n  - {value: 0.4..0.6 %, basis: published, source: invented-plastics-tables}',
      },
    ],
  },
  {
    nearMiss: 'drying over night',
    edits: [
      {
        in: clover,
        below: '  - {value: 8 s, basis: assumed, reason: Bench habit}',
        add: 'dryingTime:\n  - {value: 12 h, basis: claimed, source: oakhollow-clover-petg-sheet}',
      },
    ],
  },
];

testCases({ slips, nearMisses });
