/** An invented machine, filament and job that simulated sheets belong to. They claim nothing, so that only readings are judged. */
const assumed = 'basis: assumed, reason: Invented for simulated sheets';

const machine = `kind: machine
id: lantern-street/rig
version: 1.0.0
name: Rig
maker: Lantern Street
sheet: rig-sheet
layout: gantry
envelope: {x: 600 mm, y: 600 mm, z: 600 mm}
topSpeed:
  - {value: 900 mm/s, ${assumed}}
acceleration:
  - {value: 15000 mm/s2, ${assumed}}
hotEnds:
  - id: main
    filamentDiameter: 1.75 mm
    nozzles:
      - {id: hs-0.8, diameter: 0.8 mm, material: hardenedSteel}
bed:
  temperatureLimit:
    - {value: 120 Cel, ${assumed}}
chamber:
  enclosed: true
  heated: true
  sensed: true
  temperatureLimit:
    - {value: 90 Cel, ${assumed}}
invented: true
notice: Invented for simulated sheets; belongs to no company.
`;

const filament = `kind: filament
id: lantern-street/strand
version: 1.0.0
name: Strand PLA
maker: Lantern Street
sheet: strand-sheet
polymer: PLA
designation: PLA
diameter: 1.75 mm
density:
  - {value: 1.24 g/cm3, ${assumed}}
nozzleTemperature:
  - {value: 180..275 Cel, ${assumed}}
bedTemperature:
  - {value: 50..65 Cel, ${assumed}}
invented: true
notice: Invented for simulated sheets; belongs to no company.
`;

const polymer = `kind: polymer
id: PLA
version: 1.0.0
name: Poly(lactic acid)
structure: amorphous
feedstock: true
density:
  - {value: 1.21..1.43 g/cm3, ${assumed}}
glassTransition:
  - {value: 55..65 Cel, ${assumed}}
notice: Values invented for simulated sheets.
`;

const job = `kind: job
id: bracket
version: 1.0.0
name: Bracket
layers: 120 {count}
features:
  outerContour: {pathLength: 14 m, meanSegment: 12 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}
  infill: {pathLength: 30 m, meanSegment: 20 mm, layerHeight: 0.3 mm, lineWidth: 0.66 mm}
  travel: {pathLength: 3 m, meanSegment: 25 mm}
notice: Invented for simulated sheets.
`;

const source = (id: string, title: string) => `kind: source
id: ${id}
type: document
title: ${title}, data sheet
author: [{literal: Lantern Street}]
issued: {date-parts: [[2025]]}
standing: read
invented: true
notice: Invented for simulated sheets.
`;

/** Texts of the registry that a simulated sheet is put into, by their paths. */
export const sheetRegistry: ReadonlyMap<string, string> = new Map([
  ['machines/lantern-street/rig.yaml', machine],
  ['filaments/lantern-street/strand.yaml', filament],
  ['polymers/PLA.yaml', polymer],
  ['jobs/bracket.yaml', job],
  ['sources/rig-sheet.yaml', source('rig-sheet', 'Rig')],
  ['sources/strand-sheet.yaml', source('strand-sheet', 'Strand PLA')],
]);

/** Path of the trial that a simulated sheet becomes. */
export const trialPath = 'trials/2026/sheet.yaml';

/** A second machine and filament. */
export const otherPairing: ReadonlyMap<string, string> = new Map([
  [
    'machines/lantern-street/bench.yaml',
    machine
      .replace('lantern-street/rig', 'lantern-street/bench')
      .replace('name: Rig', 'name: Bench')
      .replace('rig-sheet', 'bench-sheet')
      .replaceAll('600 mm', '540 mm'),
  ],
  [
    'filaments/lantern-street/thread.yaml',
    filament
      .replace('lantern-street/strand', 'lantern-street/thread')
      .replace('name: Strand', 'name: Thread')
      .replace('strand-sheet', 'thread-sheet')
      .replace('50..65', '50..60'),
  ],
  ['sources/bench-sheet.yaml', source('bench-sheet', 'Bench')],
  ['sources/thread-sheet.yaml', source('thread-sheet', 'Thread PLA')],
]);
