import type { Finding } from '../../src/registry/finding.ts';
import type { Kind } from '../../src/registry/kind.ts';
import { type ReadProfile, readProfile } from '../../src/registry/read-profile.ts';
import { sourceText } from '../../src/registry/source-text.ts';

/** One document of each kind that fits its schema; together they are a registry without findings of form. */
export const goodTexts: Readonly<Record<Kind, string>> = {
  machine: `kind: machine
id: brackwater/lantern
version: 1.0.0
name: Lantern
maker: Brackwater
sheet: lantern-sheet
layout: gantry
envelope: {x: 300 mm, y: 300 mm, z: 340 mm}
topSpeed:
  - {value: 470 mm/s, basis: claimed, source: lantern-sheet}
acceleration:
  - {value: 14500 mm/s2, basis: claimed, source: lantern-sheet}
hotEnds:
  - id: main
    filamentDiameter: 1.75 mm
    temperatureLimit:
      - {value: 300 Cel, basis: claimed, source: lantern-sheet}
    nozzles:
      - {id: hs-0.4, diameter: 0.4 mm, material: hardenedSteel}
      - {id: hs-0.6, diameter: 0.6 mm, material: hardenedSteel}
bed:
  temperatureLimit:
    - {value: 110 Cel, basis: claimed, source: lantern-sheet}
chamber: {enclosed: true, heated: false, sensed: true}
sensors: [filamentPresence, clogDetection]
price:
  - {value: 1580 EUR, basis: claimed, source: lantern-sheet, date: '2026-02-01'}
`,
  filament: `kind: filament
id: ashgrove/stagecraft-pla
version: 1.0.0
name: Stagecraft PLA
maker: Ashgrove
sheet: lantern-sheet
polymer: PLA
designation: PLA
diameter: 1.75 mm
density:
  - {value: 1.24 g/cm3, basis: claimed, source: lantern-sheet}
nozzleTemperature:
  - {value: 200..235 Cel, basis: claimed, source: lantern-sheet}
bedTemperature:
  - {value: 50..60 Cel, basis: claimed, source: lantern-sheet}
meltFlow:
  - value: 43 mm3/s
    interval: 42.8..46.1 mm3/s
    basis: measured
    evidence: lantern-pla-230
    at: {machine: brackwater/lantern, nozzle: hs-0.6, nozzleTemperature: 230 Cel}
    date: '2026-03-12'
`,
  polymer: `kind: polymer
id: PLA
version: 1.0.0
name: Poly(lactic acid)
structure: amorphous
feedstock: true
density:
  - {value: 1.21..1.43 g/cm3, basis: published, source: lantern-sheet}
glassTransition:
  - {value: 45..65 Cel, basis: published, source: lantern-sheet}
`,
  trial: `kind: trial
id: lantern-pla-230
method: flowLadder
origin: simulated
date: '2026-03-12'
machine: brackwater/lantern
nozzle: hs-0.6
filament: ashgrove/stagecraft-pla
conditions: {nozzleTemperature: 230 Cel}
observations:
  columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}
  rows:
    - [20, 500, 1.49]
    - [28, 500, 1.48]
`,
  policy: `kind: policy
id: workshop
version: 1.0.0
name: Workshop
acceptedDeficit: 5 %
flowMargin: 10 %
fractions:
  firstLayer: 75 %
  outerContour: 75 %
  innerContour: 75 %
  infill: 75 %
  topSurface: 75 %
  bridge: 75 %
  overhang: 75 %
  travel: 75 %
accelerationFractions:
  firstLayer: 50 %
  outerContour: 50 %
  innerContour: 50 %
  infill: 50 %
  topSurface: 50 %
  bridge: 50 %
  overhang: 50 %
  travel: 50 %
typicalSegments:
  firstLayer: 30 mm
  outerContour: 30 mm
  innerContour: 30 mm
  infill: 30 mm
  topSurface: 30 mm
  bridge: 30 mm
  overhang: 30 mm
  travel: 30 mm
layerPath: 1.5 m
layerHeights: [25 %, 50 %]
lineWidths: [110 %]
rounding: {speed: 1 mm/s, flow: 0.1 mm3/s, acceleration: 50 mm/s2, runUp: 0.1 mm}
`,
  job: `kind: job
id: mask-rack
version: 1.0.0
name: Mask rack
layers: 240 {count}
features:
  infill: {pathLength: 120 m, meanSegment: 35 mm, layerHeight: 0.2 mm, lineWidth: 0.45 mm}
  travel: {pathLength: 30 m, meanSegment: 25 mm}
`,
  source: `kind: source
id: lantern-sheet
type: document
title: Data sheet, invented
author: [{literal: Brackwater}]
issued: {date-parts: [[2026, 1]]}
standing: read
`,
  addition: `kind: addition
id: stagecraft-pla-ours
version: 1.0.0
filament: ashgrove/stagecraft-pla
meltFlow:
  - value: 40 mm3/s
    basis: measured
    evidence: lantern-pla-230
    at: {machine: brackwater/lantern, nozzle: hs-0.6, nozzleTemperature: 230 Cel}
    date: '2026-03-12'
`,
};

/** Reads a text as the file of a kind, without any folder. */
export function readText(kind: Kind, text: string): ReadProfile {
  const path = `${kind}.yaml`;
  return readProfile({ ok: true, source: sourceText(path, path, text) }, (name) => ({
    ok: false,
    path: name,
    relativePath: name,
    problem: 'missing',
  }));
}

/** The good text of a kind with one part replaced; a part that is not there exactly once is a slip of the test. */
export function changed(kind: Kind, from: string, to: string): string {
  if (goodTexts[kind].split(from).length !== 2) throw new Error(`"${from}" is not once in the ${kind}`);
  return goodTexts[kind].replace(from, () => to);
}

/** Rule, place, message and help of each finding. */
export function essence({ rule, line, column, message, help }: Finding): string {
  return `${rule} ${line}:${column} ${message} | ${help}`;
}
