import { describe, expect, test } from 'vitest';
import { reduceDryingCurve } from '../../../src/bench/drying-curve/reduce-drying-curve.ts';
import { randomSource } from '../../../src/statistics/random.ts';
import { covers, observationsOf, resultOf } from '../observations-of.ts';

const settings = { residualMoisture: 0.0005, reelMass: 180, massResolution: 0.01 };
const hour = 3600;
const times = [0, 0.5, 1, 2, 3, 4, 6, 8, 10, 12].map((hours) => hours * hour);

/** A spool with 1000 g of dry filament on a reel of 180 g; water in g, time constant in s. */
function spool(water: number, timeConstant: number, seed: string, weighed = times) {
  const random = randomSource(seed);
  const mass = weighed.map((time) => {
    const exact = 1180 + water * Math.exp(-time / timeConstant) + 0.03 * random.normal();
    return Math.round(exact * 100) / 100;
  });
  return observationsOf({ elapsedTime: weighed, mass });
}

/** When 0.05 % of 1000 g is left. */
const known = (water: number, timeConstant: number) => timeConstant * Math.log(water / 0.5);

describe('a drying curve', () => {
  test('brackets the known time about as often as its interval says', { tags: 'long' }, () => {
    const held = Array.from({ length: 400 }, (_, index) => {
      const [water, timeConstant] = [2 + (index % 9) / 2, hour * (1.5 + (index % 80) / 50)];
      const reduced = reduceDryingCurve(spool(water, timeConstant, `spool ${index}`), settings);
      return covers(resultOf(reduced, 'dryingTime'), known(water, timeConstant));
    });
    expect(held.filter(Boolean).length / held.length).toBeGreaterThanOrEqual(0.93);
  });

  test('finds the mass of the dry filament without the reel', () => {
    const dry = resultOf(reduceDryingCurve(spool(5, 2 * hour, 'dry'), settings), 'dryMass');
    expect(dry.value).toBeCloseTo(1000, 1);
  });

  test('that never flattens only says that it takes longer', () => {
    const early = [0, 0.5, 1, 1.5, 2, 2.5, 3].map((hours) => hours * hour);
    const reduced = reduceDryingCurve(spool(6, 12 * hour, 'damp', early), settings);
    expect(resultOf(reduced, 'dryingTime')).toMatchObject({ censored: 'above', value: 3 * hour });
    expect(reduced.ok && reduced.value.warnings.join(' ')).toContain('the mass is still falling');
    expect(reduced.ok && reduced.value.results).toHaveLength(1);
  });

  test('is not extrapolated to a moisture that it did not reach', () => {
    const reduced = reduceDryingCurve(spool(8, 3 * hour, 'far'), { ...settings, residualMoisture: 0.00002 });
    expect(resultOf(reduced, 'dryingTime').censored).toBe('above');
    expect(reduced.ok && reduced.value.warnings.join(' ')).toContain('nothing is extrapolated');
  });

  test('of a spool that was dry already says so', () => {
    const reduced = reduceDryingCurve(
      observationsOf({ elapsedTime: times, mass: times.map(() => 1180.02) }),
      settings,
    );
    expect(reduced.ok && reduced.value.warnings).toEqual([
      expect.stringContaining('the spool was dry already'),
    ]);
  });

  test('takes longer to a lower moisture', () => {
    const readings = spool(5, 2 * hour, 'lower');
    const time = (residualMoisture: number) =>
      resultOf(reduceDryingCurve(readings, { ...settings, residualMoisture }), 'dryingTime').value;
    expect(time(0.0005)).toBeGreaterThan(time(0.001));
  });

  test.each([
    ['rises', [1180, 1180.5, 1181, 1181.5, 1182, 1182.5], 'massRises'],
    ['falls by a half', [1180, 900, 700, 600, 590, 585], 'implausibleReading'],
  ])('whose mass %s is refused', (_, mass, code) => {
    const readings = observationsOf({ elapsedTime: mass.map((__, index) => index * hour), mass });
    expect(reduceDryingCurve(readings, settings)).toMatchObject({ ok: false, error: [{ code }] });
  });

  /** A spool of 1000 g and 6 g of water, of which a share is left after some hours; 0.03 g of scatter. */
  const drying = (left: (hours: number) => number, seed: string) => {
    const random = randomSource(seed);
    const elapsedTime = [0, 0.5, 1, 1.5, 2, 3, 4, 5, 6, 8, 10, 13, 16, 20];
    const mass = elapsedTime.map(
      (hours) => Math.round(100 * (1180 + 6 * left(hours) + 0.03 * random.normal())) / 100,
    );
    return observationsOf({ elapsedTime: elapsedTime.map((hours) => hours * hour), mass });
  };
  const warningsOf = (left: (hours: number) => number, seed: string) => {
    const reduced = reduceDryingCurve(drying(left, seed), settings);
    return reduced.ok ? reduced.value.warnings.join(' ') : '';
  };

  test('in two stages says so, and its interval holds the time of the slow one', () => {
    const left = (hours: number) => 0.4 * Math.exp(-hours / 5) + 0.6 * Math.exp(-hours / 0.8);
    expect(warningsOf(left, 'stages')).toContain('dries in two stages');
    const time = resultOf(reduceDryingCurve(drying(left, 'stages'), settings), 'dryingTime');
    expect(covers(time, hour * 5 * Math.log(0.4 * 12))).toBe(true);
  });

  test('of a reel that warms up first says so, and counts the time that this takes', () => {
    const left = (hours: number) => Math.exp(-(hours - 1 + Math.exp(-hours)) / 2.5);
    expect(warningsOf(left, 'warming')).toContain('begins to fall late');
    const time = resultOf(reduceDryingCurve(drying(left, 'warming'), settings), 'dryingTime');
    expect(time.value / hour).toBeGreaterThan(1 + 2.5 * Math.log(12) - 0.3);
  });

  test('by one exponential says nothing of stages', () => {
    expect(warningsOf((hours) => Math.exp(-hours / 2.5), 'plain')).toBe('');
  });

  test('logged every minute takes about as long as one that was weighed by hand', () => {
    const elapsedTime = Array.from({ length: 720 }, (_, minute) => 60 * minute);
    const random = randomSource('log');
    const mass = elapsedTime.map(
      (time) => Math.round(100 * (1180 + 5 * Math.exp(-time / (2 * hour)) + 0.02 * random.normal())) / 100,
    );
    const time = resultOf(reduceDryingCurve(observationsOf({ elapsedTime, mass }), settings), 'dryingTime');
    expect(covers(time, known(5, 2 * hour))).toBe(true);
  });

  test.each([
    ['a reel that is heavier than the spool', { reelMass: 1300 }, /reel mass of 1300 g is more/],
    ['a reel of less than nothing', { reelMass: -20 }, /`reelMass` is -20 g, but it must be 0 or more/],
    [
      'a scale without a step',
      { massResolution: 0 },
      /`scale: \{resolution\}` is 0 g, but it must be above 0/,
    ],
    ['a negative step', { massResolution: -0.1 }, /`scale: \{resolution\}` is -0.1 g/],
  ])('refuses %s', (_, wrong, message) => {
    const reduced = reduceDryingCurve(spool(5, 2 * hour, 'wrong'), { ...settings, ...wrong });
    expect(reduced).toMatchObject({ ok: false, error: [{ code: 'badSetting' }] });
    expect(!reduced.ok && reduced.error[0]?.message).toMatch(message);
  });

  test('asks for a residual moisture that can be', () => {
    expect(reduceDryingCurve(spool(5, hour, 'asked'), { ...settings, residualMoisture: 0 })).toMatchObject({
      ok: false,
      error: [{ code: 'badSetting' }],
    });
  });
});
