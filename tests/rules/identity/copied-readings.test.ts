import { sampleTexts } from '../../sample-texts.ts';
import { type Edit, type NearMiss, type Slip, testCases } from '../edited-sample.ts';

const clover = 'trials/2026/wren-clover-petg-245.yaml';
const copy = 'trials/2026/wren-clover-petg-246.yaml';
const found = [`warning identity/copied-readings ${copy} | »observations:`];

const rows = [...(sampleTexts().get(clover) ?? '').matchAll(/^ {4}- \[(.*)\]$/gm)].map(([, row = '']) => row);

/** A trial of the next day, of the same pairing, with other rows. */
function nextDay(given: readonly string[]): Edit {
  const edits: [string, string][] = rows.map((row, index) => {
    const now = given[index];
    return [`    - [${row}]\n`, now === undefined ? '' : `    - [${now}]\n`];
  });
  return {
    copy: clover,
    to: copy,
    edits: [
      ['id: wren-clover-petg-245', 'id: wren-clover-petg-246'],
      ["date: '2026-02-12'", "date: '2026-02-13'"],
      ...edits,
    ],
  };
}

const withMass = (change: (mass: number, index: number) => number) =>
  rows.map((row, index) => {
    const [flow, length, mass] = row.split(', ');
    return `${flow}, ${length}, ${change(Number(mass), index).toFixed(3)}`;
  });

/** What a scale shows that reads to 0.01 g, of every other piece of 900 mm: figures that say little one by one. */
const coarse = rows
  .filter((_, index) => index % 2 === 0)
  .map((row) => {
    const [flow, , mass] = row.split(', ');
    return `${flow}, 900, ${((Number(mass) * 900) / 400).toFixed(2)}`;
  });

/** Another run with the coarse scale, some days later. */
function coarseRun(days: number, nozzle: string, given: readonly string[] = coarse): Edit {
  const id = `wren-clover-petg-24${5 + days}`;
  const edits = rows.map((row, index): [string, string] => {
    const now = given[index];
    return [`    - [${row}]\n`, now === undefined ? '' : `    - [${now}]\n`];
  });
  return {
    copy: clover,
    to: `trials/2026/${id}.yaml`,
    edits: [
      ['id: wren-clover-petg-245', `id: ${id}`],
      ["date: '2026-02-12'", `date: '2026-02-${12 + days}'`],
      ['nozzle: hs-0.6', `nozzle: ${nozzle}`],
      ['resolution: 0.001 g', 'resolution: 0.01 g'],
      ...edits,
    ],
  };
}

const slips: readonly Slip[] = [
  {
    slip: 'a whole sheet of few figures under another nozzle',
    edits: [coarseRun(1, 'hs-0.6'), coarseRun(2, 'hs-0.4')],
    found: ['warning identity/copied-readings trials/2026/wren-clover-petg-247.yaml | »observations:'],
  },
  { slip: 'all readings of another trial', edits: [nextDay(rows)], found },
  { slip: 'most of them', edits: [nextDay(rows.slice(0, 16))], found },
  {
    slip: 'all of them with every third changed',
    edits: [nextDay(withMass((mass, index) => (index % 3 === 0 ? mass + 0.002 : mass)))],
    found,
  },
  { slip: 'all of them 2 % heavier', edits: [nextDay(withMass((mass) => 1.02 * mass))], found },
  {
    slip: 'readings of another trial at flows of its own',
    edits: [nextDay(rows.map((row) => row.replace(/^\d+/, (flow) => String(Number(flow) + 1))))],
    found: [
      `warning evidence/disagreeing-trials ${copy} | »observations:`,
      `warning identity/copied-readings ${copy} | »observations:`,
    ],
  },
];

/** What a scale shows of a second run that repeats within a few thousandths. */
const again = [3, -2, 4, 1, -3, 2, 0, -4, 2, 3, -1, -3, 4, 0, 2, -2, 1, 3, -4, -1];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a sheet of few figures that the same nozzle gives once more',
    edits: [coarseRun(1, 'hs-0.6'), coarseRun(2, 'hs-0.6')],
  },
  {
    nearMiss: 'a sheet of few figures that differs in one of them under another nozzle',
    edits: [coarseRun(1, 'hs-0.6'), coarseRun(2, 'hs-0.4', coarse.with(3, '14, 900, 2.78'))],
  },
  {
    nearMiss: 'a second run of the same pairing that repeats to 0.2 %',
    edits: [nextDay(withMass((mass, index) => mass + (again[index] ?? 0) / 1000))],
  },
];

testCases({ slips, nearMisses });
