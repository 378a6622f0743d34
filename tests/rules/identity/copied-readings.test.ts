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

const slips: readonly Slip[] = [
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
    nearMiss: 'a second run of the same pairing that repeats to 0.2 %',
    edits: [nextDay(withMass((mass, index) => mass + (again[index] ?? 0) / 1000))],
  },
];

testCases({ slips, nearMisses });
