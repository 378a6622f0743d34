import { type NearMiss, petg, type Slip, testCases } from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'melting below the glass transition',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'melting:\n  - {value: 60..70 Cel, basis: published, source: invented-plastics-tables}',
      },
    ],
    found: [
      `error consistency/polymer-order ${petg} | - {value: »60..70 Cel, basis: published, source: invented-plastics-tables}`,
    ],
  },
  {
    slip: 'decomposition below the nozzle limit',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'decomposition:\n  - {value: 200..250 Cel, basis: published, source: invented-plastics-tables}',
      },
    ],
    found: [
      `error consistency/polymer-order ${petg} | - {value: »200..250 Cel, basis: published, source: invented-plastics-tables}`,
    ],
  },
  {
    slip: 'drying above the glass transition',
    edits: [{ in: petg, from: '60..66 Cel', to: '90..96 Cel' }],
    found: [
      `error consistency/polymer-order ${petg} | - {value: »90..96 Cel, basis: published, source: invented-plastics-tables}`,
    ],
  },
  {
    slip: 'drier when saturated than in room air',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'moistureEquilibrium:\n  - {value: 0.2..0.3 %, basis: published, source: invented-plastics-tables}\nmoistureSaturated:\n  - {value: 0.1..0.2 %, basis: published, source: invented-plastics-tables}',
      },
    ],
    found: [
      `error consistency/polymer-order ${petg} | - {value: »0.1..0.2 %, basis: published, source: invented-plastics-tables}`,
    ],
  },
  {
    slip: 'a nozzle window above the limit of the family',
    edits: [{ in: petg, from: '220..260 Cel', to: '220..290 Cel' }],
    found: [
      `error consistency/family-nozzle-window ${petg} | - {value: »220..290 Cel, basis: published, source: invented-plastics-tables}`,
    ],
  },
  {
    slip: 'sources that are far apart',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'specificHeatSolid:\n  - {value: 1.1..1.3 J/g/K, basis: published, source: invented-plastics-tables}\n  - {value: 2.2..2.4 J/g/K, basis: published, source: oakhollow-daisy-pla-sheet}',
      },
    ],
    found: [
      `warning consistency/sources-disagree ${petg} | - {value: »2.2..2.4 J/g/K, basis: published, source: oakhollow-daisy-pla-sheet}`,
    ],
  },
  {
    slip: 'temperatures of two sources that are far apart',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'decomposition:\n  - {value: 280..300 Cel, basis: published, source: invented-plastics-tables}\n  - {value: 430..450 Cel, basis: published, source: oakhollow-daisy-pla-sheet}',
      },
    ],
    found: [
      `warning consistency/sources-disagree ${petg} | - {value: »430..450 Cel, basis: published, source: oakhollow-daisy-pla-sheet}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'values in their order',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'melting:\n  - {value: 230..250 Cel, basis: published, source: invented-plastics-tables}\nspecificHeatSolid:\n  - {value: 1.1..1.3 J/g/K, basis: published, source: invented-plastics-tables}\nthermalConductivity:\n  - {value: 0.19..0.21 W/m/K, basis: published, source: invented-plastics-tables}\ndecomposition:\n  - {value: 283..306 Cel, basis: published, source: invented-plastics-tables}\n  - {value: 400..400 Cel, basis: published, source: oakhollow-daisy-pla-sheet}',
      },
    ],
  },
  {
    nearMiss: 'sources that overlap',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'specificHeatSolid:\n  - {value: 1.1..1.3 J/g/K, basis: published, source: invented-plastics-tables}\n  - {value: 1.2..2.4 J/g/K, basis: published, source: oakhollow-daisy-pla-sheet}',
      },
    ],
  },
  {
    nearMiss: 'sources that differ by a little',
    edits: [
      {
        in: petg,
        below: '  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}',
        add: 'specificHeatSolid:\n  - {value: 1.1..1.3 J/g/K, basis: published, source: invented-plastics-tables}\n  - {value: 2.0..2.4 J/g/K, basis: published, source: oakhollow-daisy-pla-sheet}',
      },
    ],
  },
];

testCases({ slips, nearMisses });
