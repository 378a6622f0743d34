import { describe, expect, test } from 'vitest';
import { simulateLayerTime } from '../../../scripts/methods/simulate-layer-time.ts';
import { coverageOf } from '../../../scripts/methods/simulated-bench.ts';
import { reduceLayerTime } from '../../../src/bench/layer-time/reduce-layer-time.ts';
import { randomSource } from '../../../src/statistics/random.ts';
import { covers, observationsOf, repeated, resultOf, shareOf } from '../observations-of.ts';

const cases = Array.from({ length: 60 }, (_, index) => index);

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

  test('hold it too where the shape fails all at once between two times', { tags: 'long' }, () => {
    const { rows } = coverageOf('layerTime', simulateLayerTime, 900, 700_000);
    expect(rows).toHaveLength(3);
    for (const { covered } of rows) expect(covered).toBeGreaterThan(0.93);
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
