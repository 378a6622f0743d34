import { describe, expect, test } from 'vitest';
import type { BenchProblem } from '../../../src/bench/bench-problem.ts';
import type { FlowLadderSettings } from '../../../src/bench/flow-ladder/flow-ladder-settings.ts';
import { reduceFlowLadder } from '../../../src/bench/flow-ladder/reduce-flow-ladder.ts';

type Row = readonly [flow: number, length: number, mass: number];

const settings: FlowLadderSettings = {
  filamentDiameter: 1.75,
  density: 1.24e-3,
  acceptedDeficit: 0.05,
  massResolution: 0.001,
};
const good: readonly Row[] = [
  [20, 500, 1.49],
  [25, 500, 1.492],
  [30, 500, 1.487],
  [35, 500, 1.489],
  [40, 500, 1.47],
  [45, 500, 1.4],
  [50, 500, 1.3],
];

function problemsOf(
  rows: readonly Row[],
  changed: Partial<FlowLadderSettings> = {},
): readonly BenchProblem[] {
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
  return reduced.ok ? [] : reduced.error;
}

const replaced = (index: number, row: Row): readonly Row[] => good.with(index, row);

test('a sound ladder has no problem', () => {
  expect(problemsOf(good)).toEqual([]);
});

test('a starved hot end may deliver more at a higher flow, up to twice as much', () => {
  const starved: readonly Row[] = [...good, [55, 500, 0.5], [60, 500, 0.7]];
  expect(problemsOf(starved)).toEqual([]);
  expect(problemsOf(starved.with(7, [55, 500, 0.3]))).toMatchObject([{ code: 'readingOutOfLine', row: 9 }]);
});

test('three steps are too few', () => {
  expect(problemsOf(good.slice(0, 3))).toMatchObject([{ code: 'tooFewSteps', found: '3' }]);
});

test('steps at and above a halt do not count', () => {
  expect(problemsOf(good, { haltedAt: 35 })).toMatchObject([{ code: 'tooFewSteps', found: '3' }]);
});

test.each([
  ['a zero mass', replaced(5, [45, 500, 0]), 7],
  ['a negative flow', replaced(0, [-20, 500, 1.49]), 2],
  ['a length that is no number', replaced(3, [35, Number.NaN, 1.49]), 5],
])('%s', (_, rows, row) => {
  expect(problemsOf(rows)).toMatchObject([{ code: 'notPositive', row }]);
});

test('several bad readings are all named', () => {
  const rows = replaced(5, [45, 500, 0]).with(6, [50, 500, 0]);
  expect(problemsOf(rows).map(({ row }) => row)).toEqual([7, 8]);
});

test.each([
  ['mass and length swapped', good.map(([flow, length, mass]) => [flow, mass, length] as const)],
  [
    'flow and length swapped',
    good.map(([flow, length, mass], index) => [length + index, flow, mass] as const),
  ],
  [
    'a mass in milligrams read as grams',
    good.map(([flow, length, mass]) => [flow, length, mass * 1000] as const),
  ],
])('%s', (_, rows) => {
  expect(problemsOf(rows)).toMatchObject([{ code: 'implausibleRatio' }]);
});

test.each([
  ['a decimal point slipped to the right', replaced(2, [30, 500, 3.2]), 4],
  ['a decimal point slipped to the left', replaced(2, [30, 500, 0.487]), 4],
  ['a piece that broke off', replaced(3, [35, 500, 1.1]), 5],
])('%s', (_, rows, row) => {
  expect(problemsOf(rows)).toMatchObject([{ code: 'readingOutOfLine', row }]);
});

test('a repeat that weighs less than half of the other', () => {
  expect(problemsOf([...good, [50, 500, 0.6]])).toMatchObject([{ code: 'readingOutOfLine', row: 9 }]);
});

test('a high piece past the onset whose repeat fits, and not the steps before it', () => {
  const falling = (at: number) => 1.488 - Math.max(0, at - 18) * 0.055;
  const rows = [6, 9, 12, 15, 18, 21, 24, 27].flatMap((flow) => [
    [flow, 500, falling(flow)] as const,
    [flow, 500, falling(flow) - 0.002] as const,
  ]);
  const slipped = rows.with(14, [27, 500, 1.6]);
  expect(problemsOf(rows)).toEqual([]);
  expect(problemsOf(slipped)).toMatchObject([{ code: 'readingOutOfLine', row: 16 }]);
  expect(problemsOf(slipped)[0]?.message).toMatch(/above its repeats$/);
});

test('delivery that breaks down at once is no slip', () => {
  expect(problemsOf([...good, [55, 500, 0.7], [60, 500, 0.5]])).toEqual([]);
});

test('a table pasted twice', () => {
  expect(problemsOf([...good, ...good])).toMatchObject([{ code: 'repeatedTable', row: 9 }]);
});

test('repeats that happen to agree are no copy', () => {
  expect(problemsOf(good.flatMap((row) => [row, row]))).toEqual([]);
});

describe('settings that cannot be', () => {
  test.each([
    ['filamentDiameter', 0],
    ['density', -1],
    ['massResolution', Number.NaN],
    ['acceptedDeficit', 0],
    ['acceptedDeficit', 5],
    ['feedLengthUncertainty', -0.1],
    ['haltedAt', 0],
  ])('%s %f', (name, value) => {
    const [problem] = problemsOf(good, { [name]: value });
    expect(problem).toMatchObject({ code: 'badSetting', found: String(value) });
    expect(problem?.message).toContain(name);
  });
});

test('every problem says what to do', () => {
  for (const { help } of [...problemsOf(good.slice(0, 2)), ...problemsOf([...good, ...good])]) {
    expect(help.length).toBeGreaterThan(20);
  }
});
