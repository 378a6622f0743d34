import type { BenchRun } from '../../src/bench/facts/fact.ts';
import type { MethodName } from '../../src/bench/method-facts.ts';
import { methodOf } from '../../src/bench/methods.ts';
import { dimensionInfo } from '../../src/units/dimension.ts';
import type { SimulatedBench } from '../methods/simulated-bench.ts';

/** Readings of a bench run as they are written: one text a cell, so that an alteration keeps its digits. */
export interface Sheet {
  readonly method: MethodName;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly run: BenchRun;
}

/** What a simulated bench shows, written down; rounding errors of the simulation are no digits. */
export function sheetOf(method: MethodName, { columns, run }: SimulatedBench): Sheet {
  const names = Object.keys(columns);
  const [first = []] = Object.values(columns);
  return {
    method,
    columns: names,
    rows: first.map((_, row) => names.map((name) => cell(columns[name]?.[row] ?? Number.NaN))),
    run,
  };
}

function cell(value: number): string {
  return String(Number(value.toPrecision(9)));
}

/** Where a trial states the facts of a run, and in which unit. */
const facts = {
  acceptedDeficit: ['acceptedDeficit', '1'],
  feedLengthUncertainty: ['feedLengthUncertainty', '1'],
  acceptedStrength: ['acceptedStrength', '1'],
  acceptedRipple: ['acceptedRipple', 'mm'],
  acceptedDefect: ['acceptedDefect', 'mm'],
  residualMoisture: ['residualMoisture', '1'],
  reelMass: ['reelMass', 'g'],
  backgroundLevel: ['backgroundLevel', 'dB[SPL]{A}'],
  roomCorrection: ['roomCorrection', 'dB[SPL]{A}'],
  checkedPart: ['checkedPart', ''],
  settledWithin: ['settledWithin', 'K'],
  massResolution: ['scale.resolution', 'g'],
  lengthResolution: ['gauge.resolution', 'mm'],
  lengthAccuracy: ['gauge.accuracy', 'mm'],
  meterClass: ['soundMeter.class', ''],
  levelResolution: ['soundMeter.resolution', 'dB[SPL]{A}'],
  thermometerResolution: ['thermometer.resolution', 'K'],
  thermometerAccuracy: ['thermometer.accuracy', 'K'],
  hygrometerResolution: ['hygrometer.resolution', '1'],
  hygrometerAccuracy: ['hygrometer.accuracy', '1'],
} as const satisfies Readonly<Record<string, readonly [place: string, unit: string]>>;

/** The text of a trial that holds a sheet. */
export function trialText({ method, columns, rows, run }: Sheet): string {
  const { columns: plan } = methodOf(method);
  const units = columns.map((name) => {
    const dimension = plan[name];
    return `${name}: '${dimension === undefined ? '' : (dimensionInfo[dimension].canonicalUnit ?? '')}'`;
  });
  return `kind: trial
id: sheet
method: ${method}
origin: simulated
date: '2026-03-12'
machine: lantern-street/rig
nozzle: hs-0.8
filament: lantern-street/strand
batch: 26-0117
${method === 'referencePrint' ? 'job: bracket\n' : ''}conditions: {${conditionsOf(method, run).join(', ')}}
${factLines(run).join('\n')}
observations:
  columns: {${units.join(', ')}}
  rows:
${rows.map((cells) => `    - [${cells.join(', ')}]`).join('\n')}
notice: Simulated; no bench has run it.
`;
}

function conditionsOf(method: MethodName, { commandedAcceleration }: BenchRun): string[] {
  return [
    'ambientTemperature: 22 Cel',
    ...(method === 'temperatureSweep' || method === 'dryingCurve' ? [] : ['nozzleTemperature: 220 Cel']),
    ...(method === 'dryingCurve' ? ['dryingTemperature: 45 Cel'] : []),
    ...(commandedAcceleration === undefined
      ? []
      : [`acceleration: ${cell(Number(commandedAcceleration))} mm/s2`]),
  ];
}

/** Keys of the trial, those of one instrument together. */
function factLines(run: BenchRun): string[] {
  const instruments = new Map<string, string[]>();
  const lines: string[] = [];
  for (const [name, [place, unit]] of Object.entries(facts)) {
    const value = run[name];
    if (value === undefined) continue;
    const text = unit === '' ? String(value) : `'${Number(Number(value).toPrecision(9))} ${unit}'`;
    const [key = place, part] = place.split('.');
    if (part === undefined) lines.push(`${key}: ${text}`);
    else instruments.set(key, [...(instruments.get(key) ?? []), `${part}: ${text}`]);
  }
  return [...lines, ...[...instruments].map(([key, parts]) => `${key}: {${parts.join(', ')}}`)];
}
