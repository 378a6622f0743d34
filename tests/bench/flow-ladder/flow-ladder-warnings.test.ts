import { expect, test } from 'vitest';
import type { FlowLadderSettings } from '../../../src/bench/flow-ladder/flow-ladder-settings.ts';
import { reduceFlowLadder } from '../../../src/bench/flow-ladder/reduce-flow-ladder.ts';

type Row = readonly [flow: number, length: number, mass: number];

const settings: FlowLadderSettings = {
  filamentDiameter: 1.75,
  density: 1.24e-3,
  acceptedDeficit: 0.05,
  massResolution: 0.001,
};

/** Eight steps with two readings each: full delivery up to 40 mm3/s, then a slow fall. */
const good: readonly Row[] = [
  [20, 500, 1.49],
  [20, 500, 1.494],
  [25, 500, 1.488],
  [25, 500, 1.492],
  [30, 500, 1.491],
  [30, 500, 1.487],
  [35, 500, 1.493],
  [35, 500, 1.486],
  [40, 500, 1.479],
  [40, 500, 1.485],
  [45, 500, 1.43],
  [45, 500, 1.436],
  [50, 500, 1.35],
  [50, 500, 1.344],
  [55, 500, 1.25],
  [55, 500, 1.255],
];

function warningsFor(rows: readonly Row[], changed: Partial<FlowLadderSettings> = {}): readonly string[] {
  const reduced = reduceFlowLadder(
    {
      columns: {
        commandedFlow: rows.map((row) => row[0]),
        feedLength: rows.map((row) => row[1]),
        extrudedMass: rows.map((row) => row[2]),
      },
      rows: rows.map((_, index) => index + 2),
    },
    { ...settings, ...changed },
  );
  if (!reduced.ok) throw new Error(JSON.stringify(reduced.error));
  return reduced.value.warnings;
}

test('a sound ladder has none', () => {
  expect(warningsFor(good)).toEqual([]);
});

test('a second ascending pass is in order', () => {
  const odd = good.filter((_, index) => index % 2 === 0);
  const even = good.filter((_, index) => index % 2 === 1);
  expect(warningsFor([...odd, ...even])).toEqual([]);
});

const lateStart: readonly Row[] = [
  [30, 500, 1.49],
  [30, 500, 1.493],
  [50, 500, 1.3],
  [50, 500, 1.306],
  [55, 500, 1.2],
  [55, 500, 1.21],
  [60, 500, 1.1],
  [60, 500, 1.12],
];
/** A fall of 4 % in a straight line, then a breakdown. */
const slipping: readonly Row[] = [10, 15, 20, 25, 30, 35, 40, 45, 50].flatMap((flow) =>
  [1.488, 1.492].map((mass) => [flow, 500, mass * (1.01 - flow / 1000) * (flow < 45 ? 1 : 0.7)] as const),
);
const gap: readonly Row[] = [
  ...good.slice(0, 8),
  [70, 500, 0.7],
  [70, 500, 0.71],
  [75, 500, 0.66],
  [75, 500, 0.65],
];
const barelyPast: readonly Row[] = [...good.slice(0, 10), [46, 500, 1.406], [46, 500, 1.413]];

test.each<[what: string, rows: readonly Row[], changed: Partial<FlowLadderSettings>, said: string]>([
  ['few steps', good.slice(4, 14), {}, 'Only 5 different flows'],
  ['no repeats', good.filter((_, index) => index % 2 === 0), {}, 'No step was repeated'],
  ['light samples', good, { massResolution: 0.01 }, 'At 8 of 8'],
  [
    'flows out of order',
    [...good.slice(0, 6), ...good.slice(8), ...good.slice(6, 8)],
    {},
    'do not ascend (row 16)',
  ],
  ['a plateau that falls', slipping, { acceptedDeficit: 0.1 }, 'over the plateau, before the onset'],
  [
    'a ratio off nominal',
    good.map(([flow, length, mass]) => [flow, length, mass * 0.85] as const),
    {},
    'At the lowest steps 85 % of the fed mass came out, 15 % less than the nominal mass',
  ],
  ['only the lowest step below the limit', lateStart, {}, 'Only the lowest step is below the limit'],
  ['a wide gap', gap, {}, 'add steps between 35 mm3/s and 70 mm3/s'],
  ['an end near the limit', barelyPast, {}, 'reaches beyond the highest step (46 mm3/s)'],
])('%s', (_, rows, changed, said) => {
  expect(warningsFor(rows, changed).join('\n')).toContain(said);
});
