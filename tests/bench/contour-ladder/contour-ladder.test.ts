import { describe, expect, test } from 'vitest';
import { reduceContourLadder } from '../../../src/bench/contour-ladder/reduce-contour-ladder.ts';
import { randomSource } from '../../../src/statistics/random.ts';
import { covers, observationsOf, repeated, resultOf, shareOf } from '../observations-of.ts';

const cases = Array.from({ length: 60 }, (_, index) => index);

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
