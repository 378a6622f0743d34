import { describe, expect, test } from 'vitest';
import { reduceTemperatureSweep } from '../../../src/bench/temperature-sweep/reduce-temperature-sweep.ts';
import { randomSource } from '../../../src/statistics/random.ts';
import { covers, observationsOf, repeated, resultOf, shareOf } from '../observations-of.ts';

const cases = Array.from({ length: 60 }, (_, index) => index);

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

  /** Strengths by a shape, three of each with 3 % of scatter. */
  function shaped(shape: (temperature: number) => number, seed: string) {
    const random = randomSource(seed);
    const nozzleTemperature = repeated([190, 200, 210, 220, 230, 240, 250, 260], 3);
    const bondStrength = nozzleTemperature.map(
      (temperature) => 30 * shape(temperature) * Math.exp(0.03 * random.normal()),
    );
    return observationsOf({ nozzleTemperature, bondStrength });
  }

  test('with two peaks names the dip, and its window reaches over one that is shallow', () => {
    const shape = (at: number) =>
      Math.abs(at - 225) < 15
        ? 1 - 0.04 * (1 + Math.cos((Math.PI * (at - 225)) / 15))
        : 1 - ((Math.abs(at - 225) - 15) / 40) ** 2;
    const reduced = reduceTemperatureSweep(shaped(shape, 'peaks'), { acceptedStrength: 0.88 });
    expect(reduced.ok && reduced.value.warnings.join(' ')).toMatch(/two peaks with a dip near 22\d Cel/);
    expect(covers(resultOf(reduced, 'lowestNozzleTemperature'), 225 - 15 - 40 * Math.sqrt(0.12))).toBe(true);
  });

  test('with a flat top says so, and its window holds the true one', () => {
    const shape = (at: number) => 0.1 + 0.9 / (1 + Math.exp((203 - at) / 4)) / (1 + Math.exp((at - 249) / 4));
    const reduced = reduceTemperatureSweep(shaped(shape, 'flat'), {});
    expect(reduced.ok && reduced.value.warnings.join(' ')).toContain('The top is flat');
    // 90 % of the top is left where the logistic edge has 0.8889.
    expect(covers(resultOf(reduced, 'lowestNozzleTemperature'), 203 + 4 * Math.log(8))).toBe(true);
    expect(covers(resultOf(reduced, 'highestNozzleTemperature'), 249 - 4 * Math.log(8))).toBe(true);
  });

  test('with one peak says nothing of its top', () => {
    const reduced = reduceTemperatureSweep(sweep(226, [46, 40], 'plain', 0.03), {});
    expect(reduced.ok && reduced.value.warnings).toEqual([]);
  });

  test('of grades that are faultless at several temperatures says that they tell no best one', () => {
    const nozzleTemperature = repeated([200, 210, 220, 230, 240, 250], 2);
    const grade = [2, 2, 5, 5, 5, 5, 5, 5, 4, 3, 2, 1];
    const reduced = reduceTemperatureSweep(observationsOf({ nozzleTemperature, grade }), {});
    expect(reduced.ok && reduced.value.warnings.join(' ')).toContain(
      'faultless at temperatures from 210 Cel to 230 Cel',
    );
  });
});
