import { cloverTrial, type Edit, hook, type NearMiss, type Slip, testCases, wren } from '../edited-sample.ts';

const survey = 'trials/2026/clover-petg-diameter.yaml';

/** A survey whose readings are written to 0.01 mm, with some step of the caliper. */
function surveyWith(resolution: string): Edit {
  return {
    write: survey,
    text: `kind: trial
id: clover-petg-diameter
method: diameterSurvey
origin: simulated
date: '2026-02-12'
filament: oakhollow/clover-petg
conditions: {ambientTemperature: 21 Cel}
gauge: {resolution: ${resolution}}
observations:
  columns: {position: m, firstDiameter: mm, secondDiameter: mm}
  rows:
    - [0, 1.76, 1.74]
    - [1, 1.77, 1.75]
    - [2, 1.75, 1.74]
    - [3, 1.76, 1.73]
    - [4, 1.77, 1.74]
    - [5, 1.76, 1.75]
    - [6, 1.75, 1.75]
    - [7, 1.76, 1.74]
    - [8, 1.77, 1.76]
    - [9, 1.76, 1.74]
notice: Readings drawn by a program for the tests of this project.
`,
  };
}

function conditions(added: string): Edit {
  return {
    in: cloverTrial,
    from: 'ambientTemperature: 21 Cel',
    to: `ambientTemperature: 21 Cel\n  ${added}`,
  };
}

const slips: readonly Slip[] = [
  {
    slip: 'a build envelope nine times as flat as high',
    edits: [
      { in: wren, from: 'x: 236 mm, y: 228 mm', to: 'x: 60 mm, y: 55 mm' },
      { in: wren, from: 'z: 242 mm', to: 'z: 700 mm' },
    ],
    found: [`warning consistency/envelope-sides ${wren} | envelope: {x: 60 mm, y: 55 mm, z: »700 mm}`],
  },
  {
    slip: 'a depth that lost a digit',
    edits: [{ in: wren, from: 'x: 236 mm, y: 228 mm, z: 242 mm', to: 'x: 570 mm, y: 62 mm, z: 640 mm' }],
    found: [`warning consistency/envelope-sides ${wren} | envelope: {x: 570 mm, y: »62 mm, z: 640 mm}`],
  },
  {
    slip: 'a height that lost a digit',
    edits: [{ in: wren, from: 'x: 236 mm, y: 228 mm, z: 242 mm', to: 'x: 570 mm, y: 620 mm, z: 70 mm' }],
    found: [`warning consistency/envelope-sides ${wren} | envelope: {x: 570 mm, y: 620 mm, z: »70 mm}`],
  },
  {
    slip: 'a depth with two digits exchanged',
    edits: [{ in: wren, from: 'y: 228 mm', to: 'y: 963 mm' }],
    found: [`warning consistency/envelope-sides ${wren} | envelope: {x: 236 mm, y: »963 mm, z: 242 mm}`],
  },
  {
    slip: 'parallel arms with a width in another unit',
    edits: [
      { in: wren, from: 'layout: gantry', to: 'layout: parallelArm' },
      { in: wren, from: 'x: 236 mm, y: 228 mm, z: 242 mm', to: 'x: 228 cm, y: 228 mm, z: 600 mm' },
    ],
    found: [`warning consistency/envelope-sides ${wren} | envelope: {x: »228 cm, y: 228 mm, z: 600 mm}`],
  },
  {
    slip: 'a part that no machine is tall enough for',
    edits: [{ in: hook, from: 'layers: 120', to: 'layers: 1200' }],
    found: [`warning consistency/job-height ${hook} | layers: »1200 {count}`],
  },
  {
    slip: 'a layer thinner than a tenth of the nozzle',
    edits: [conditions('layerHeight: 0.03 mm')],
    found: [`warning consistency/layer-height ${cloverTrial} | layerHeight: »0.03 mm`],
  },
  {
    slip: 'a fan that does not turn',
    edits: [conditions('fan: 3 %')],
    found: [`warning plausibility/fan-speed ${cloverTrial} | fan: »3 %`],
  },
  {
    slip: 'a step of the scale that is coarser than its readings',
    edits: [{ in: cloverTrial, from: 'resolution: 0.001 g', to: 'resolution: 0.01 g' }],
    found: [`warning evidence/scale-digits ${cloverTrial} | scale: {resolution: »0.01 g}`],
  },
  {
    slip: 'a step of the gauge that no reading shows',
    edits: [surveyWith('0.001 mm')],
    found: [`warning evidence/scale-digits ${survey} | gauge: {resolution: »0.001 mm}`],
  },
  {
    slip: 'a step of the gauge with a digit told twice',
    edits: [surveyWith('0.011 mm')],
    found: [`warning consistency/odd-rounding ${survey} | gauge: {resolution: »0.011 mm}`],
  },
  {
    slip: 'a step of the gauge that is coarser than its readings',
    edits: [surveyWith('0.1 mm')],
    found: [`warning evidence/scale-digits ${survey} | gauge: {resolution: »0.1 mm}`],
  },
];

const nearMisses: readonly NearMiss[] = [
  { nearMiss: 'a tall frame', edits: [{ in: wren, from: 'z: 242 mm', to: 'z: 1300 mm' }] },
  {
    nearMiss: 'a part as tall as the machine',
    edits: [{ in: hook, from: 'layers: 120', to: 'layers: 806' }],
  },
  { nearMiss: 'a layer as high as the nozzle is wide', edits: [conditions('layerHeight: 0.6 mm')] },
  { nearMiss: 'a fan that is off', edits: [conditions('fan: 0 %')] },
  { nearMiss: 'a fan that barely turns', edits: [conditions('fan: 5 %')] },
  { nearMiss: 'a caliper with its own step', edits: [surveyWith('0.01 mm')] },
  { nearMiss: 'a caliper with a step in inches', edits: [surveyWith("'0.0005 [in_i]'")] },
  { nearMiss: 'a caliper with a step in inches, told in millimetres', edits: [surveyWith('0.0127 mm')] },
  {
    nearMiss: 'one reading with a digit too many',
    edits: [{ in: cloverTrial, from: '[16, 400, 1.220]', to: '[16, 400, 1.2205]' }],
  },
];

testCases({ slips, nearMisses });
