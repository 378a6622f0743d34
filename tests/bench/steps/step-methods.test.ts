import { describe, expect, test } from 'vitest';
import { reduceContourLadder } from '../../../src/bench/contour-ladder/reduce-contour-ladder.ts';
import { reduceLayerTime } from '../../../src/bench/layer-time/reduce-layer-time.ts';
import { reduceTemperatureSweep } from '../../../src/bench/temperature-sweep/reduce-temperature-sweep.ts';
import { randomSource } from '../../../src/statistics/random.ts';
import { covers, observationsOf, repeated, resultOf } from '../observations-of.ts';

const cases = Array.from({ length: 60 }, (_, index) => index);

function shareOf(held: readonly boolean[]): number {
  return held.filter(Boolean).length / held.length;
}

describe('a contour ladder', () => {
  const speeds = [40, 60, 80, 100, 120, 140, 160, 180];

  /** Ripples in mm that grow as a power of the speed and reach 0.02 mm at the limit. */
  function ladder(limit: number, power: number, seed: string, factor = 1) {
    const random = randomSource(seed);
    const contourSpeed = repeated(speeds, 2);
    const rippleAmplitude = contourSpeed.map(
      (speed) => Math.round(20 * factor * (speed / limit) ** power * Math.exp(0.1 * random.normal())) / 1000,
    );
    return observationsOf({ contourSpeed, rippleAmplitude });
  }

  const settings = { acceptedRipple: 0.02, lengthResolution: 0.001 };

  test('brackets a known limit at least as often as its interval says', () => {
    const held = cases.map((index) => {
      const limit = 85 + index;
      const reduced = reduceContourLadder(ladder(limit, 1 + (index % 5) / 2, `contour ${index}`), settings);
      return covers(resultOf(reduced, 'contourSpeed'), limit);
    });
    expect(shareOf(held)).toBeGreaterThanOrEqual(0.92);
  });

  test('that stays below the accepted ripple gives a lower bound, the fastest speed that surely held', () => {
    const result = resultOf(reduceContourLadder(ladder(400, 2, 'calm'), settings), 'contourSpeed');
    expect(result).toMatchObject({ censored: 'above', value: 180, interval: { low: null, high: null } });
  });

  test('that starts above it gives an upper bound', () => {
    const result = resultOf(reduceContourLadder(ladder(20, 1.5, 'rough'), settings), 'contourSpeed');
    expect(result).toMatchObject({ censored: 'below', value: 40 });
  });

  test('at two accelerations gives a limit for each', () => {
    const [slow, fast] = [ladder(140, 2, 'slow'), ladder(90, 2, 'fast')];
    const join = (name: string) => [...(slow.columns[name] ?? []), ...(fast.columns[name] ?? [])];
    const reduced = reduceContourLadder(
      observationsOf({
        contourSpeed: join('contourSpeed'),
        rippleAmplitude: join('rippleAmplitude'),
        acceleration: [...slow.rows.map(() => 3000), ...fast.rows.map(() => 9000)],
      }),
      settings,
    );
    if (!reduced.ok) throw new Error('it must reduce');
    const [first, second] = reduced.value.results;
    expect([first?.at, second?.at]).toEqual([{ acceleration: 3000 }, { acceleration: 9000 }]);
    expect(first?.value).toBeGreaterThan(second?.value ?? Number.NaN);
  });

  test('gives a lower limit for a smaller accepted ripple', () => {
    const readings = ladder(120, 2, 'order');
    const limit = (acceptedRipple: number) =>
      resultOf(reduceContourLadder(readings, { ...settings, acceptedRipple }), 'contourSpeed').value;
    expect(limit(0.01)).toBeLessThan(limit(0.02));
  });

  test('of measured ripples says that it needs the accepted one', () => {
    expect(reduceContourLadder(ladder(100, 2, 'none'), {})).toMatchObject({
      ok: false,
      error: [{ code: 'missingFact' }],
    });
  });
});

describe('layer times', () => {
  const times = [2, 3, 4, 5, 6, 8, 10, 12, 15, 20];

  function graded(limit: number, width: number, seed: string) {
    const random = randomSource(seed);
    const layerTime = repeated(times, 2);
    const grade = layerTime.map((time) => {
      const quality = 1 + 4.4 / (1 + Math.exp(-(time - limit) / width - Math.log(2.5 / 1.9)));
      return Math.min(5, Math.max(1, Math.round(quality + 0.25 * random.normal())));
    });
    return observationsOf({ layerTime, grade });
  }

  test('bracket a known limit at least as often as the interval says', () => {
    const held = cases.map((index) => {
      const limit = 5 + index / 12;
      const reduced = reduceLayerTime(graded(limit, 1 + (index % 4), `layer ${index}`), {});
      return covers(resultOf(reduced, 'shortestLayerTime'), limit);
    });
    expect(shareOf(held)).toBeGreaterThanOrEqual(0.92);
  });

  test('put the limit between the last that fails and the first that passes', () => {
    const layerTime = [3, 3, 5, 5, 7, 7, 9, 9];
    const readings = observationsOf({ layerTime, grade: [1, 1, 2, 2, 5, 5, 5, 5] });
    const { value, interval } = resultOf(reduceLayerTime(readings, {}), 'shortestLayerTime');
    expect(value).toBeGreaterThan(5);
    expect(value).toBeLessThan(7);
    expect(interval.low).toBeGreaterThan(4.5);
    expect(interval.high).toBeLessThan(7.5);
  });

  test('that all pass give an upper bound, the shortest that surely held', () => {
    const readings = observationsOf({ layerTime: [4, 6, 8, 10], grade: [5, 5, 5, 5] });
    expect(resultOf(reduceLayerTime(readings, {}), 'shortestLayerTime')).toMatchObject({
      censored: 'below',
      value: 4,
    });
  });

  test('that all fail give a lower bound', () => {
    const readings = observationsOf({ layerTime: [4, 6, 8, 10], grade: [1, 1, 2, 2] });
    expect(resultOf(reduceLayerTime(readings, {}), 'shortestLayerTime').censored).toBe('above');
  });

  test('must be longer for a better grade', () => {
    const readings = graded(7, 2, 'better');
    const limit = (acceptedGrade: number) =>
      resultOf(reduceLayerTime(readings, { acceptedGrade }), 'shortestLayerTime').value;
    expect(limit(5)).toBeGreaterThan(limit(3));
  });
});

describe('a temperature sweep', () => {
  function sweep(best: number, widths: readonly [number, number], seed: string, scatter = 0.06) {
    const random = randomSource(seed);
    const nozzleTemperature = repeated([190, 200, 210, 220, 230, 240, 250, 260], 3);
    const bondStrength = nozzleTemperature.map((temperature) => {
      const width = temperature < best ? widths[0] : widths[1];
      return 30 * Math.exp(-(((temperature - best) / width) ** 2) + scatter * random.normal());
    });
    return observationsOf({ nozzleTemperature, bondStrength });
  }

  /** Distance from the best temperature at which 90 % of the strength is left, in widths. */
  const reach = Math.sqrt(-Math.log(0.9));

  test('brackets both known ends of a window about as often as its intervals say', () => {
    const held = cases.flatMap((index) => {
      const [best, widths] = [222 + (index % 9), [40 + (index % 7) * 4, 36 + (index % 5) * 4]] as const;
      const reduced = reduceTemperatureSweep(
        sweep(best, [widths[0] ?? 0, widths[1] ?? 0], `sweep ${index}`),
        {},
      );
      return [
        covers(resultOf(reduced, 'lowestNozzleTemperature'), best - reach * (widths[0] ?? 0)),
        covers(resultOf(reduced, 'highestNozzleTemperature'), best + reach * (widths[1] ?? 0)),
      ];
    });
    expect(shareOf(held)).toBeGreaterThanOrEqual(0.9);
  });

  test('finds the same window for strengths that are all off by one factor', () => {
    const readings = sweep(228, [50, 44], 'factor');
    const { nozzleTemperature = [], bondStrength = [] } = readings.columns;
    const scaled = observationsOf({ nozzleTemperature, bondStrength: bondStrength.map((one) => 1.3 * one) });
    const [one, other] = [readings, scaled].map((columns) =>
      resultOf(reduceTemperatureSweep(columns, {}), 'lowestNozzleTemperature'),
    );
    expect(other?.value).toBeCloseTo(one?.value ?? Number.NaN, 3);
  });

  test('is wider where less of the strength must be left', () => {
    const readings = sweep(226, [46, 40], 'share');
    const low = (acceptedStrength: number) =>
      resultOf(reduceTemperatureSweep(readings, { acceptedStrength }), 'lowestNozzleTemperature').value;
    expect(low(0.8)).toBeLessThan(low(0.95));
  });

  test('that still rises at its end has an open upper end', () => {
    const readings = sweep(300, [60, 60], 'rising');
    const reduced = reduceTemperatureSweep(readings, {});
    expect(resultOf(reduced, 'highestNozzleTemperature').censored).toBe('above');
  });

  test('takes grades, and says so where none is good', () => {
    const nozzleTemperature = [200, 210, 220, 230, 240];
    const good = observationsOf({ nozzleTemperature, grade: [2, 4, 5, 4, 2] });
    const low = resultOf(reduceTemperatureSweep(good, {}), 'lowestNozzleTemperature');
    expect(low.value).toBeGreaterThan(200);
    expect(low.value).toBeLessThan(211);
    const bad = observationsOf({ nozzleTemperature, grade: [1, 1, 2, 1, 1] });
    expect(reduceTemperatureSweep(bad, {})).toMatchObject({ ok: false, error: [{ code: 'nothingPasses' }] });
  });
});
