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

  /** A ladder with a resonance at 100 mm/s that makes the ripple so many times as deep. */
  function resonant(times: number, seed: string) {
    const random = randomSource(seed);
    const contourSpeed = repeated([40, 60, 80, 90, 100, 110, 120, 140, 160, 180, 200], 2);
    const rippleAmplitude = contourSpeed.map((speed) => {
      const resonance = 1 + (times - 1) * Math.exp(-(((speed - 100) / 14) ** 2));
      return Math.round(20 * (speed / 170) ** 2 * resonance * Math.exp(0.07 * random.normal())) / 1000;
    });
    return observationsOf({ contourSpeed, rippleAmplitude });
  }

  test('with a resonance past the accepted ripple has its limit below that, and names the speeds', () => {
    const reduced = reduceContourLadder(resonant(5, 'hump'), settings);
    const limit = resultOf(reduced, 'contourSpeed');
    expect(limit.interval.high).toBeLessThan(100);
    expect(reduced.ok && reduced.value.warnings).toEqual([
      expect.stringMatching(/peak at 100 mm\/s and falls again by 1[24]0 mm\/s.* the limit lies below/),
    ]);
  });

  test('with a resonance that stays below the accepted ripple has its limit beyond, and says so', () => {
    const contourSpeed = repeated([40, 60, 80, 90, 100, 110, 120, 140, 160, 180, 200], 2);
    const microns = [2, 2, 3, 3, 9, 10, 12, 12, 13, 14, 12, 11, 7, 7, 10, 10, 14, 15, 22, 23, 30, 29];
    const rippleAmplitude = microns.map((ripple) => ripple / 1000);
    const reduced = reduceContourLadder(observationsOf({ contourSpeed, rippleAmplitude }), settings);
    const { low } = resultOf(reduced, 'contourSpeed').interval;
    expect(low).toBeGreaterThan(160);
    expect(reduced.ok && reduced.value.warnings.join(' ')).toContain('the peak itself is accepted here');
  });

  test('with grades that get better again has its limit below the worse ones', () => {
    const contourSpeed = repeated([40, 60, 80, 100, 120, 140, 160], 2);
    const grade = [5, 5, 5, 5, 4, 4, 2, 2, 4, 4, 4, 4, 3, 3];
    const reduced = reduceContourLadder(observationsOf({ contourSpeed, grade }), {});
    expect(resultOf(reduced, 'contourSpeed').value).toBeLessThan(100);
    expect(reduced.ok && reduced.value.warnings.join(' ')).toContain('rises to a peak at 100 mm/s');
  });

  test('refuses a gauge with a negative step and a grade that there is not', () => {
    expect(
      reduceContourLadder(ladder(100, 2, 'step'), { ...settings, lengthResolution: -0.001 }),
    ).toMatchObject({
      ok: false,
      error: [{ message: expect.stringContaining('`gauge: {resolution}` is -0.001 mm') }],
    });
    const graded = observationsOf({ contourSpeed: speeds, grade: [5, 5, 4, 4, 3, 3, 2, 1] });
    expect(reduceContourLadder(graded, { acceptedGrade: -3 })).toMatchObject({
      ok: false,
      error: [
        {
          message: expect.stringContaining(
            '`acceptedGrade` is -3, but it must be a whole number from 2 to 5',
          ),
        },
      ],
    });
  });
});
