import { describe, expect, test } from 'vitest';
import { reduceSettingLadder } from '../../../src/bench/setting-ladder/reduce-setting-ladder.ts';
import { observationsOf, repeated, resultOf } from '../observations-of.ts';

const lengths = [0.2, 0.4, 0.6, 0.8, 1, 1.2];
const accepted = { acceptedDefect: 0.5 };

describe('a ladder of one setting', () => {
  test('finds the shortest retraction from measured strings', () => {
    // The size falls with the square of the length, and is 0.5 mm at 0.7 mm.
    const defectSize = lengths.map((length) => Number((0.5 * (0.7 / length) ** 2).toFixed(2)));
    const reduced = reduceSettingLadder(observationsOf({ retractionLength: lengths, defectSize }), accepted);
    const { value, interval } = resultOf(reduced, 'retractionLength');
    expect(value).toBeGreaterThan(0.65);
    expect(value).toBeLessThan(0.75);
    // One specimen each that scatters by some 15 % with a size that falls with the square: about 20 % either way.
    expect(interval.low).toBeGreaterThan(0.5);
    expect(interval.high).toBeLessThan(0.9);
  });

  test('finds the highest bridge speed from grades', () => {
    const bridgeSpeed = repeated([20, 30, 40, 50, 60, 70], 2);
    const grade = [5, 5, 5, 5, 5, 4, 3, 3, 2, 2, 1, 1];
    const { value } = resultOf(
      reduceSettingLadder(observationsOf({ bridgeSpeed, grade }), {}),
      'bridgeSpeed',
    );
    expect(value).toBeGreaterThan(38);
    expect(value).toBeLessThan(50);
  });

  test('finds the middle of the pressure compensations that hold', () => {
    const pressureCompensation = [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06];
    const grade = [1, 2, 4, 5, 4, 2, 1];
    const reduced = reduceSettingLadder(observationsOf({ pressureCompensation, grade }), {});
    expect(resultOf(reduced, 'pressureCompensation').value).toBeCloseTo(0.03, 2.5);
  });

  test('finds both ends of the fan settings that hold', () => {
    const fan = repeated([0, 0.2, 0.4, 0.6, 0.8, 1], 2);
    const reduced = reduceSettingLadder(
      observationsOf({ fan, grade: [1, 1, 2, 3, 4, 4, 5, 5, 5, 5, 5, 5] }),
      {},
    );
    expect(resultOf(reduced, 'lowestFan').censored).toBeNull();
    expect(resultOf(reduced, 'highestFan')).toMatchObject({ censored: 'above', value: 1 });
    // There is no fan setting above full speed to ask for.
    expect(reduced.ok && reduced.value.warnings.join()).not.toContain('add higher settings');
  });

  test('gives a bound where every setting holds', () => {
    const reduced = reduceSettingLadder(
      observationsOf({ overhangSpeed: [20, 40, 60, 80], grade: [5, 5, 5, 5] }),
      {},
    );
    expect(resultOf(reduced, 'overhangSpeed')).toMatchObject({ censored: 'above', value: 80 });
  });

  test('spans the gap where all is lost from one step to the next', () => {
    const stickingSpeed = repeated([20, 40, 60, 80, 100, 120], 2);
    const grade = stickingSpeed.map((speed) => (speed <= 60 ? 5 : 1));
    const { interval } = resultOf(
      reduceSettingLadder(observationsOf({ stickingSpeed, grade }), {}),
      'stickingSpeed',
    );
    expect(interval.low).toBeLessThan(64);
    expect(interval.high).toBeGreaterThan(76);
  });

  test('tells readings that do not go steadily with the setting', () => {
    const bridgeSpeed = repeated([20, 30, 40, 50, 60, 70], 3);
    const grade = bridgeSpeed.map((speed) => (speed === 30 ? 1 : speed > 50 ? 2 : 5));
    const reduced = reduceSettingLadder(observationsOf({ bridgeSpeed, grade }), {});
    expect(reduced.ok && reduced.value.warnings[0]).toContain(
      'The readings do not go steadily with the bridge speed: those at 30 mm/s',
    );
  });
});

describe('a ladder is refused', () => {
  const grade = [1, 2, 4, 5];
  test.each([
    [
      'with no accepted size',
      { retractionLength: [0.2, 0.4, 0.6, 0.8], defectSize: [4, 2, 1, 0.4] },
      'missingFact',
    ],
    ['with a fan beyond full speed', { fan: [0, 20, 60, 100], grade }, 'implausibleReading'],
    ['with three settings', { bridgeSpeed: [20, 30, 40, 40], grade }, 'tooFewSteps'],
    ['with a grade of 6', { bridgeSpeed: [20, 30, 40, 50], grade: [6, 5, 4, 1] }, 'badGrade'],
    ['without a setting', { grade }, 'missingColumn'],
  ])('%s', (_, columns, code) => {
    const reduced = reduceSettingLadder(observationsOf(columns), {});
    expect(reduced.ok ? [] : reduced.error.map((problem) => problem.code)).toContain(code);
  });
});
