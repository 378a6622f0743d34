import { describe, expect, test } from 'vitest';
import { reduceSetPointCheck } from '../../../src/bench/set-point-check/reduce-set-point-check.ts';
import { observationsOf, repeated, resultOf } from '../observations-of.ts';

const run = { checkedPart: 'bed', thermometerAccuracy: 1, thermometerResolution: 0.1 } as const;
const times = [60, 120, 240, 360, 480, 600];

/** A part that warms up from 20 K below and ends at an offset of its own. */
function warmedUp(sets: readonly number[], offsetAt: (set: number) => number) {
  const setTemperature = repeated(sets, times.length);
  const elapsedTime = sets.flatMap(() => times);
  const referenceTemperature = setTemperature.map((set, index) => {
    const below = 20 * Math.exp(-(elapsedTime[index] ?? 0) / 60);
    return set + offsetAt(set) - below + 0.1 * Math.sin(5 * index);
  });
  return observationsOf({ setTemperature, elapsedTime, referenceTemperature });
}

describe('a check of set temperatures', () => {
  test('finds the offset, with the accuracy of the thermometer in its interval', () => {
    const { value, interval } = resultOf(
      reduceSetPointCheck(
        warmedUp([60, 80, 100], () => -4),
        run,
      ),
      'bedTemperatureOffset',
    );
    expect(value).toBeCloseTo(-4, 0.7);
    expect(interval.low).toBeLessThan(-4.9);
    expect(interval.high).toBeGreaterThan(-3.1);
    expect((interval.high ?? 0) - (interval.low ?? 0)).toBeLessThan(3);
  });

  test('tells how the offset depends on the set temperature', () => {
    const reduced = reduceSetPointCheck(
      warmedUp([60, 80, 100], (set) => -0.05 * set),
      run,
    );
    expect(resultOf(reduced, 'offsetSlope').value).toBeCloseTo(-0.05, 2);
    expect(resultOf(reduced, 'reachedTemperature').value).toBeCloseTo(95, 0);
    expect(reduced.ok && reduced.value.warnings[0]).toContain('The offset changes by');
  });

  test('brackets the time to settle by the readings around it', () => {
    // 20 K shrink to 2 K after 60·ln 10 = 138 s, between the second and the third reading.
    const { interval } = resultOf(
      reduceSetPointCheck(
        warmedUp([60, 80, 100], () => 0),
        run,
      ),
      'settlingTime',
    );
    expect(interval.low).toBeGreaterThanOrEqual(120);
    expect(interval.high).toBeLessThanOrEqual(240);
  });

  test('needs no times where all readings had settled', () => {
    const setTemperature = repeated([60, 80, 100], 3);
    const referenceTemperature = setTemperature.map((set, index) => set + 2 + 0.1 * (index % 3));
    const reduced = reduceSetPointCheck(observationsOf({ setTemperature, referenceTemperature }), run);
    expect(resultOf(reduced, 'bedTemperatureOffset').value).toBeCloseTo(2.1, 1);
    expect(reduced.ok && reduced.value.results.map(({ quantity }) => quantity)).not.toContain('settlingTime');
  });

  test('is refused where a part had not settled, and where the unit is another', () => {
    const { columns } = warmedUp([60], () => 0);
    const early = Object.fromEntries(
      Object.entries(columns).map(([name, values]) => [name, values.slice(0, 2)]),
    );
    expect(reduceSetPointCheck(observationsOf(early), run)).toMatchObject({
      ok: false,
      error: [{ code: 'tooFewSteps' }],
    });
    const fahrenheit = observationsOf({
      setTemperature: [230, 230, 230],
      referenceTemperature: [446, 447, 446],
    });
    expect(reduceSetPointCheck(fahrenheit, run)).toMatchObject({
      ok: false,
      error: [{ code: 'implausibleReading' }],
    });
  });
});

describe('a check of humidity', () => {
  const dryer = { checkedPart: 'dryer', hygrometerAccuracy: 0.02, hygrometerResolution: 0.01 } as const;
  const minutes = [5, 10, 15, 20, 25, 30, 35, 40];
  const dried = (reads: readonly number[]) =>
    observationsOf({
      setHumidity: minutes.map(() => 0.15),
      elapsedTime: minutes.map((time) => 60 * time),
      referenceHumidity: reads,
    });
  const readings = dried([0.31, 0.24, 0.21, 0.19, 0.18, 0.18, 0.17, 0.18]);

  test('finds how much damper a dryer is than it says', () => {
    const { value, interval, dimension } = resultOf(
      reduceSetPointCheck(readings, dryer),
      'dryerHumidityOffset',
    );
    expect(dimension).toBe('ratio');
    expect(value).toBeCloseTo(0.027, 2);
    expect(interval.low).toBeGreaterThan(-0.005);
    expect(interval.high).toBeLessThan(0.06);
  });

  test('is refused at a nozzle, and against a thermometer', () => {
    const refusals = (observations: typeof readings, checkedPart: 'nozzle' | 'dryer') => {
      const reduced = reduceSetPointCheck(observations, { ...dryer, checkedPart });
      return reduced.ok ? [] : reduced.error.map(({ message }) => message);
    };
    expect(refusals(readings, 'nozzle')).toEqual([
      'humidity is checked in a chamber or a dryer, not at a nozzle',
    ]);
    const mixed = observationsOf({ setHumidity: [0.15, 0.15, 0.15], referenceTemperature: [50, 50, 50] });
    expect(refusals(mixed, 'dryer')).toEqual([
      'there is a column setHumidity, but none of referenceHumidity',
    ]);
  });
});
