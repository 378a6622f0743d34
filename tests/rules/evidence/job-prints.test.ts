import { clover, type Edit, hook, testCases } from '../edited-sample.ts';

const file = 'trials/2026/wren-hook.yaml';

interface Print {
  readonly infill?: string;
  readonly rows?: readonly string[];
}

const settings = (infill: string) => `settings:
  outerContour: {speed: 100 mm/s, acceleration: 5000 mm/s2}
  infill: {speed: ${infill}, acceleration: 8200 mm/s2}
  travel: {speed: 430 mm/s, acceleration: 8200 mm/s2}
`;

/** A reference print of the sample's job, which takes 16 min and weighs 9.98 g by the model. */
function print({ infill = '130 mm/s', rows = ['[16.1, 9.8]', '[16.2, 9.9]'] }: Print): Edit {
  const text = `# yaml-language-server: $schema=../../../../../schema/trial.schema.json
kind: trial
id: wren-hook
method: referencePrint
origin: simulated
date: '2026-02-14'
machine: plumstead/wren
nozzle: hs-0.6
filament: oakhollow/clover-petg
job: hook
${settings(infill)}firmware: 1.3.0
conditions:
  nozzleTemperature: 245 Cel
  ambientTemperature: 21 Cel
scale: {resolution: 0.1 g}
observations:
  columns: {printTime: min, mass: g}
  rows:
${rows.map((row) => `    - ${row}`).join('\n')}
notice: Figures made up for the tests of this project; nobody has printed it.
`;
  return { write: file, text };
}

const longerInfill: Edit = { in: hook, from: 'pathLength: 30 m', to: 'pathLength: 300 m' };

testCases({
  slips: [
    {
      slip: 'a speed in another unit, which one setting explains',
      edits: [print({ infill: '130 mm/min' })],
      found: [
        `warning consistency/print-time ${file} | infill: {speed: »130 mm/min, acceleration: 8200 mm/s2}`,
      ],
    },
    {
      slip: 'a lost digit of a setting, and not the path that would explain the time of this one print, too',
      edits: [print({ infill: '13 mm/s' })],
      found: [`warning consistency/print-time ${file} | infill: {speed: »13 mm/s, acceleration: 8200 mm/s2}`],
    },
    {
      slip: 'a time that no single setting explains',
      edits: [print({ rows: ['[36.1, 9.8]', '[36.2, 9.9]'] })],
      found: [`warning consistency/print-time ${file} | »observations:`],
    },
    {
      slip: 'a mass of another part',
      edits: [print({ rows: ['[16.1, 19.8]', '[16.2, 19.9]'] })],
      found: [`warning evidence/print-mass ${file} | »observations:`],
    },
    {
      slip: 'a path of a job that none of its prints fits, once and at the job',
      edits: [print({}), longerInfill],
      found: [
        `warning evidence/job-prints ${hook} | infill: {pathLength: »300 m, meanSegment: 20 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
      ],
    },
    {
      slip: 'a path that fits neither the others nor any print, once',
      edits: [print({}), { in: hook, from: 'pathLength: 30 m', to: 'pathLength: 3000 m' }],
      found: [
        `warning consistency/paths-apart ${hook} | infill: {pathLength: »3000 m, meanSegment: 20 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}`,
      ],
    },
    {
      slip: 'a print whose mass is one of two that disagree, by that alone',
      edits: [print({ rows: ['[16.1, 9.8]', '[16.2, 29.9]'] })],
      found: [`warning evidence/reading-off-trend ${file} | - »[16.1, 9.8]`],
    },
  ],
  nearMisses: [
    {
      nearMiss: 'the mass of a print that does not say how it was set',
      edits: [
        print({ rows: ['[16.1, 19.8]', '[16.2, 19.9]'] }),
        { in: file, from: settings('130 mm/s'), to: '' },
      ],
    },
    {
      nearMiss: 'a mass by the density that holds on the machine of the print',
      edits: [
        print({ rows: ['[16.1, 11.9]', '[16.2, 11.9]'] }),
        {
          in: clover,
          from: 'nozzleTemperature:',
          to: '  - {value: 1.31 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet, at: {machine: plumstead/wren}}\nnozzleTemperature:',
        },
      ],
    },
    { nearMiss: 'prints as the job gives them', edits: [print({})] },
    {
      nearMiss: 'prints that are a tenth too heavy and slower by a tenth',
      edits: [print({ rows: ['[17.6, 10.9]', '[17.7, 11.0]'] })],
    },
  ],
});
