import { describe, expect, test } from 'vitest';
import type { FlowLadderSettings } from '../../../src/bench/flow-ladder/flow-ladder-settings.ts';
import { reduceFlowLadder } from '../../../src/bench/flow-ladder/reduce-flow-ladder.ts';
import type { DrawnReduction, ReducedResult } from '../../../src/bench/reduction.ts';
import type { Observations } from '../../../src/bench/sheet/observations.ts';
import { type SimulatedCase, simulatedCases } from './simulated-cases.ts';

function reduced(observations: Observations, settings: FlowLadderSettings): DrawnReduction {
  const reduction = reduceFlowLadder(observations, settings);
  if (!reduction.ok) throw new Error(JSON.stringify(reduction.error));
  return reduction.value;
}

const meltFlow = (observations: Observations, settings: FlowLadderSettings): ReducedResult =>
  reduced(observations, settings).results[0]!;

function caseOf(id: string): SimulatedCase {
  const found = simulatedCases.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found;
}

function scaled(observations: Observations, column: string, factor: number): Observations {
  const values = observations.columns[column]!.map((value) => value * factor);
  return { ...observations, columns: { ...observations.columns, [column]: values } };
}

function ladder(rows: readonly (readonly [flow: number, length: number, mass: number])[]): Observations {
  return {
    columns: {
      commandedFlow: rows.map((row) => row[0]),
      feedLength: rows.map((row) => row[1]),
      extrudedMass: rows.map((row) => row[2]),
    },
    rows: rows.map((_, index) => index + 2),
  };
}

const settings: FlowLadderSettings = {
  filamentDiameter: 1.75,
  density: 1.24e-3,
  acceptedDeficit: 0.05,
  massResolution: 0.001,
};

describe('simulated bench runs with a known limit', () => {
  const holdsTruth = ({ observations, settings: own, limit, atLeast }: SimulatedCase): boolean => {
    const { value, interval, censored } = meltFlow(observations, own);
    if (limit === null) return censored === 'above' && value === atLeast;
    return interval.low !== null && interval.high !== null && interval.low <= limit && limit <= interval.high;
  };

  test('at least 13 of the 14 intervals hold the truth', () => {
    expect(simulatedCases).toHaveLength(14);
    expect(simulatedCases.filter(holdsTruth).length).toBeGreaterThanOrEqual(13);
  });

  test.each(simulatedCases.filter(({ limit }) => limit === null))('$id ends before the limit', (each) => {
    const result = meltFlow(each.observations, each.settings);
    expect(result).toMatchObject({
      value: each.atLeast,
      censored: 'above',
      interval: { low: null, high: null, coverage: 0.95 },
    });
  });
});

describe('what cancels', () => {
  const { observations, settings: own } = caseOf('ladder-006');
  const before = meltFlow(observations, own);

  test.each([
    ['density', { ...own, density: own.density * 1.07 }, observations],
    ['diameter', { ...own, filamentDiameter: own.filamentDiameter * 0.97 }, observations],
    ['a feed calibration', own, scaled(observations, 'feedLength', 1.03)],
    [
      'the calibration of the scale',
      { ...own, massResolution: own.massResolution * 1.02 },
      scaled(observations, 'extrudedMass', 1.02),
    ],
  ])('an error of %s', (_, changed, readings) => {
    expect(meltFlow(readings, changed)).toEqual(before);
  });

  test('the order of the rows', () => {
    const order = observations.rows.map((_, index) => index).reverse();
    const reordered = {
      columns: Object.fromEntries(
        Object.entries(observations.columns).map(([name, values]) => [
          name,
          order.map((index) => values[index]!),
        ]),
      ),
      rows: order.map((index) => observations.rows[index]!),
    };
    expect(meltFlow(reordered, own)).toEqual(before);
  });
});

describe('what the limit follows', () => {
  const { observations, settings: own } = caseOf('ladder-010');
  const before = meltFlow(observations, own);

  test('flows in another unit scale the limit', () => {
    const { value, interval } = meltFlow(scaled(observations, 'commandedFlow', 2), own);
    expect(value / before.value).toBeCloseTo(2, 4);
    expect(interval.high! / before.interval.high!).toBeCloseTo(2, 4);
  });

  test('more accepted deficit, a higher limit', () => {
    const limits = [0.03, 0.05, 0.08, 0.12].map(
      (acceptedDeficit) => meltFlow(observations, { ...own, acceptedDeficit }).value,
    );
    expect(limits).toEqual(limits.toSorted((one, other) => one - other));
    expect(new Set(limits).size).toBe(4);
  });

  test('less mass past the onset, a lower limit', () => {
    const flows = observations.columns.commandedFlow!;
    const less = observations.columns.extrudedMass!.map((mass, row) =>
      flows[row]! > 50 ? mass * 0.97 : mass,
    );
    const weaker = { ...observations, columns: { ...observations.columns, extrudedMass: less } };
    expect(meltFlow(weaker, own).value).toBeLessThan(before.value);
  });

  test('a coarser scale, a wider interval', () => {
    const width = ({ interval }: ReducedResult) => interval.high! - interval.low!;
    expect(width(meltFlow(observations, { ...own, massResolution: 0.1 }))).toBeGreaterThan(
      1.2 * width(before),
    );
  });
});

test('the same readings give the same bytes', () => {
  const { observations, settings: own } = caseOf('ladder-004');
  const once = JSON.stringify(reduced(observations, own));
  expect(JSON.stringify(reduced(observations, own))).toBe(once);
});

test('results carry six significant digits at most', () => {
  const { observations, settings: own } = caseOf('ladder-001');
  const { value, interval } = meltFlow(observations, own);
  for (const number of [value, interval.low!, interval.high!]) {
    expect(number).toBe(Number(number.toPrecision(6)));
  }
});

describe('the plot', () => {
  const { observations, settings: own } = caseOf('ladder-003');
  const { curve, results } = reduced(observations, own);

  test('holds every reading, the accepted deficit and the limit', () => {
    expect(curve.readings).toHaveLength(observations.rows.length);
    expect(curve.threshold).toBe(own.acceptedDeficit);
    expect(curve.limits).toEqual([
      {
        value: results[0]!.value,
        low: results[0]!.interval.low,
        high: results[0]!.interval.high,
      },
    ]);
  });

  test('spans the tested flows with a curve inside its band', () => {
    expect(curve.fit[0]!.x).toBe(27);
    expect(curve.fit.at(-1)!.x).toBe(83.25);
    for (const [index, { y }] of curve.fit.entries()) {
      expect(y).toBeGreaterThanOrEqual(curve.band[index]!.low);
      expect(y).toBeLessThanOrEqual(curve.band[index]!.high);
    }
  });

  test('crosses the accepted deficit at the limit', () => {
    const after = curve.fit.findIndex(({ y }) => y >= own.acceptedDeficit);
    expect(curve.fit[after - 1]!.x).toBeLessThan(results[0]!.value * 1.005);
    expect(curve.fit[after]!.x).toBeGreaterThan(results[0]!.value * 0.995);
  });

  test('has no limit where the readings have none', () => {
    const open = caseOf('censored-031');
    expect(reduced(open.observations, open.settings).curve.limits).toEqual([]);
  });
});

describe('limits outside of the ladder', () => {
  test('a run that halts before the deficit gives the highest flow that held', () => {
    const { observations, settings: own } = caseOf('ladder-005');
    const { results, warnings } = reduced(observations, { ...own, haltedAt: 48 });
    expect(results[0]).toMatchObject({ censored: 'above', value: 40.5 });
    expect(warnings[0]).toContain('halted at 48 mm3/s');
    expect(warnings[0]).toContain('between 40.5 mm3/s and the halt');
  });

  test('a halt past the limit leaves the limit standing', () => {
    const { observations, settings: own } = caseOf('ladder-010');
    const { results, warnings } = reduced(observations, { ...own, haltedAt: 63 });
    expect(results[0]!.censored).toBeNull();
    expect(warnings[0]).toContain('halted at 63 mm3/s');
  });

  test('a ladder that starves from its first step on gives that flow as a bound from above', () => {
    const starving = ladder([
      [40, 500, 1.1],
      [45, 500, 0.95],
      [50, 500, 0.84],
      [55, 500, 0.76],
      [60, 500, 0.69],
    ]);
    const { results, warnings } = reduced(starving, settings);
    expect(results[0]).toMatchObject({
      censored: 'below',
      value: 40,
      interval: { low: null, high: null, coverage: 0.95 },
    });
    expect(warnings[0]).toContain('lowest step already delivers too little');
  });
});
