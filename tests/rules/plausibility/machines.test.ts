import { type NearMiss, type Slip, testCases, wren } from '../edited-sample.ts';

/** A drive force above the limit of the hot end; the one family of the sample whose strength is known bears 90 MPa. */
const driveOf = (force: string) =>
  `    driveForce:\n      - {value: ${force}, basis: claimed, source: plumstead-wren-sheet}\n    temperatureLimit:`;

const slips: readonly Slip[] = [
  {
    slip: 'a heater that cannot melt the claimed flow',
    edits: [{ in: wren, from: 'value: 50 W', to: 'value: 12 W' }],
    found: [`error plausibility/heater-power ${wren} | - value: »32 mm3/s`],
  },
  {
    slip: 'a melt zone that leaves the core hard',
    edits: [{ in: wren, from: 'value: 24 mm,', to: 'value: 3 mm,' }],
    found: [`warning plausibility/melt-zone ${wren} | - value: »32 mm3/s`],
  },
  {
    slip: 'a flow that no drive pushes',
    edits: [
      { in: wren, from: 'value: 32 mm3/s', to: 'value: 150 mm3/s' },
      { in: wren, from: 'value: 50 W', to: 'value: 100 W' },
      { in: wren, from: 'polymer: PLA, nozzleTemperature', to: 'nozzleTemperature' },
    ],
    found: [`warning plausibility/filament-feed ${wren} | - value: »150 mm3/s`],
  },
  {
    slip: 'a speed that the bed is too short for',
    edits: [{ in: wren, from: 'value: 8200 mm/s2', to: 'value: 550 mm/s2' }],
    found: [
      `warning plausibility/run-up ${wren} | - {value: »430 mm/s, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a drive that pushes harder than any strand bears',
    edits: [{ in: wren, from: '    temperatureLimit:', to: driveOf('230 N') }],
    found: [
      `warning plausibility/drive-force ${wren} | - {value: »230 N, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
  {
    slip: 'a heater with a digit too many',
    edits: [{ in: wren, from: 'value: 50 W', to: 'value: 500 W' }],
    found: [
      `warning plausibility/heater-for-flow ${wren} | - {value: »500 W, basis: claimed, source: plumstead-wren-sheet}`,
    ],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a small heater that is just enough',
    edits: [{ in: wren, from: 'value: 50 W', to: 'value: 15 W' }],
  },
  {
    nearMiss: 'a strong heater',
    edits: [{ in: wren, from: 'value: 50 W', to: 'value: 200 W' }],
  },
  {
    nearMiss: 'a short melt zone that softens the core',
    edits: [{ in: wren, from: 'value: 24 mm,', to: 'value: 5 mm,' }],
  },
  {
    nearMiss: 'a fast filament that drives still push',
    edits: [
      { in: wren, from: 'value: 32 mm3/s', to: 'value: 140 mm3/s' },
      { in: wren, from: 'value: 50 W', to: 'value: 100 W' },
      { in: wren, from: 'polymer: PLA, nozzleTemperature', to: 'nozzleTemperature' },
    ],
  },
  {
    nearMiss: 'a drive that pushes as hard as the strand bears',
    edits: [{ in: wren, from: '    temperatureLimit:', to: driveOf('215 N') }],
  },
  {
    nearMiss: 'a run-up as long as the bed',
    edits: [
      { in: wren, from: 'value: 8200 mm/s2', to: 'value: 1500 mm/s2' },
      { in: wren, from: 'x: 236 mm, y: 228 mm', to: 'x: 88 mm, y: 88 mm' },
    ],
  },
];

testCases({ slips, nearMisses });
