import { type Edit, testCases, wren } from '../edited-sample.ts';

/** Statements of a property of the sample machine instead of its own; trials that are not in the registry are found as well. */
function stating(key: keyof typeof own, lines: readonly string[]): Edit[] {
  return [{ in: wren, from: own[key], to: lines.map((line) => `  - {${line}}`).join('\n') }];
}

const own = {
  topSpeed: '  - {value: 430 mm/s, basis: claimed, source: plumstead-wren-sheet}',
  soundLevel: "  - {value: '52 dB[SPL]{A}', basis: claimed, source: plumstead-wren-sheet}",
} as const;

const claimed = (value: string) => `value: ${value}, basis: claimed, source: plumstead-wren-sheet`;
const measured = (value: string, interval: string) =>
  `value: ${value}, interval: ${interval}, basis: measured, evidence: wren-again`;

const speed = measured('410 mm/s', '400..420 mm/s');
const sound = measured("'58 dB[SPL]{A}'", "'55..62 dB[SPL]{A}'");

const dangling = (line: string) =>
  `error references/dangling ${wren} | - {${line.replace('evidence: ', 'evidence: »')}}`;
const apart = (value: string) =>
  `warning consistency/claim-below-trials ${wren} | - {${claimed(value).replace('value: ', 'value: »')}}`;

testCases({
  slips: [
    {
      slip: 'a claimed top speed that has lost a digit',
      edits: stating('topSpeed', [claimed('43 mm/s'), speed]),
      found: [apart('43 mm/s'), dangling(speed)],
    },
    {
      slip: 'a claimed sound level whose digits are exchanged',
      edits: stating('soundLevel', [claimed("'42 dB[SPL]{A}'"), sound]),
      found: [apart("'42 dB[SPL]{A}'"), dangling(sound)],
    },
    {
      slip: 'nothing but the trial that is not there: a claim as far above what was measured as sheets are',
      edits: stating('topSpeed', [claimed('520 mm/s'), speed]),
      found: [dangling(speed)],
    },
    {
      slip: 'a drying trial far hotter than the filament is dried',
      edits: [
        {
          write: 'trials/2026/clover-petg-drying.yaml',
          text: dryingTrial('105 Cel'),
        },
      ],
      found: [
        'warning consistency/trial-outside-window trials/2026/clover-petg-drying.yaml | dryingTemperature: »105 Cel',
      ],
    },
  ],
});

function dryingTrial(temperature: string): string {
  return `kind: trial
id: clover-petg-drying
method: dryingCurve
origin: simulated
date: '2026-02-12'
filament: oakhollow/clover-petg
conditions:
  dryingTemperature: ${temperature}
  ambientTemperature: 23 Cel
residualMoisture: 0.1 %
reelMass: 176 g
scale: {resolution: 0.01 g}
observations:
  columns: {elapsedTime: h, mass: g}
  rows:
    - [0, 932.00]
    - [1, 930.04]
    - [2, 928.75]
    - [3, 927.88]
    - [4, 927.29]
    - [6, 926.62]
    - [8, 926.34]
notice: Invented for the tests of this project.
`;
}
