import type { Edit } from './edited-sample.ts';

export const sorrel = 'filaments/oakhollow/sorrel-pla.yaml';
export const sorrelTrial = 'trials/2026/wren-sorrel-pla-230.yaml';
export const again = 'trials/2026/wren-daisy-pla-again.yaml';
export const shelf = 'jobs/shelf.yaml';

/** A second filament of the same family, with further keys. */
export function sorrelWith(keys: string, write: string = sorrel): Edit {
  const text = `kind: filament
id: oakhollow/sorrel-pla
version: 1.0.0
name: Sorrel PLA
maker: Oakhollow
sheet: oakhollow-daisy-pla-sheet
polymer: PLA
designation: PLA
diameter: 1.75 mm
density:
  - {value: 1.24 g/cm3, basis: claimed, source: oakhollow-daisy-pla-sheet}
nozzleTemperature:
  - {value: 200..235 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet}
bedTemperature:
  - {value: 50..60 Cel, basis: claimed, source: oakhollow-daisy-pla-sheet}
${keys}notice: Invented for the tests of this project; belongs to no company.
`;
  return { write, text };
}

/** A trial of the sample machine and filament with its rows; `head` is what it says of itself, by its method first. */
export function trialWith(file: string, head: string, rows: readonly string[]): Edit {
  const id = file.replace(/^.*\/(.*)\.yaml$/, '$1');
  const text = `kind: trial\nid: ${id}\n${head.replace('\n', "\norigin: simulated\ndate: '2026-02-14'\n")}\n  rows:\n${rows.map((row) => `    - [${row}]\n`).join('')}notice: Invented for the tests of the project.\n`;
  return { write: file, text };
}

/** Rows of a ladder whose limit lies at 28 mm³/s, with one of them replaced. */
export function inlineLadder(from = '', to = ''): string {
  return `  columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}
  rows:
    - [16, 400, 1.197]
    - [20, 400, 1.195]
    - [24, 400, 1.193]
    - [28, 400, 1.131]
    - [32, 400, 1.055]
    - [36, 400, 0.981]
`.replace(from, to);
}

/** A further ladder on the sample machine with hs-0.6 at 230 °C. */
export function ladder({
  write = again,
  filament = 'oakhollow/daisy-pla',
  date = '2026-03-01',
  observations = inlineLadder(),
}: {
  readonly write?: string;
  readonly filament?: string;
  readonly date?: string;
  readonly observations?: string;
} = {}): Edit {
  const text = `kind: trial
id: ${/([^/]+)\.yaml$/.exec(write)?.[1]}
method: flowLadder
origin: simulated
date: '${date}'
machine: plumstead/wren
nozzle: hs-0.6
filament: ${filament}
conditions: {nozzleTemperature: 230 Cel}
acceptedDeficit: 5 %
scale: {resolution: 0.001 g}
observations:
${observations}notice: Readings drawn by a program for the tests of this project; no bench has run this ladder.
`;
  return { write, text };
}

/** A ladder with the second filament. */
export function sorrelLadder(observations: string = inlineLadder()): Edit {
  return ladder({ write: sorrelTrial, filament: 'oakhollow/sorrel-pla', observations });
}

/** A second job, with further keys. */
export function shelfWith(keys = '', { write = shelf, id = 'shelf' } = {}): Edit {
  const text = `kind: job
id: ${id}
version: 1.0.0
name: Coat hook
layers: 120 {count}
features:
  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}
notice: Invented for the tests of this project; belongs to no company.
${keys}`;
  return { write, text };
}
