import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  backgroundCorrection,
  dailyExposureLevel,
  levelAtOtherDistance,
  meanOfLevels,
  powerLevelFromPressure,
  pressureLevelAtDistance,
  sumOfLevels,
} from '../../src/physics/sound.ts';

const level = fc.double({ min: 20, max: 110, noNaN: true });
const distance = fc.double({ min: 100, max: 10_000, noNaN: true });
const field = fc.constantFrom('free', 'overPlane');

describe('pressureLevelAtDistance', () => {
  it('is undone by powerLevelFromPressure', () => {
    fc.assert(
      fc.property(level, distance, field, (power, r, where) => {
        const pressure = pressureLevelAtDistance(power, r, where);
        expect(powerLevelFromPressure(pressure, r, where)).toBeCloseTo(power, 9);
      }),
    );
  });

  it('agrees with the step from one distance to another', () => {
    fc.assert(
      fc.property(level, distance, distance, field, (power, from, to, where) => {
        const moved = levelAtOtherDistance(pressureLevelAtDistance(power, from, where), from, to);
        expect(moved).toBeCloseTo(pressureLevelAtDistance(power, to, where), 9);
      }),
    );
  });
});

describe('backgroundCorrection', () => {
  it('takes the background out of the sum again', () => {
    fc.assert(
      fc.property(level, fc.double({ min: 0.5, max: 30, noNaN: true }), (background, louder) => {
        const measured = background + louder;
        const source = measured - backgroundCorrection(louder);
        expect(sumOfLevels([source, background])).toBeCloseTo(measured, 9);
      }),
    );
  });
});

describe('sumOfLevels and meanOfLevels', () => {
  it('the mean of equal levels is that level', () => {
    expect(meanOfLevels([54, 54, 54, 54])).toBeCloseTo(54, 10);
  });

  it('the mean lies nearer the louder one', () => {
    expect(meanOfLevels([50, 60])).toBeGreaterThan(55);
  });

  it('silence is minus infinity', () => {
    expect(sumOfLevels([])).toBe(Number.NEGATIVE_INFINITY);
    expect(meanOfLevels([])).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('dailyExposureLevel', () => {
  it('is the level itself over eight hours', () => {
    expect(dailyExposureLevel(82, 8 * 3600)).toBe(82);
  });
});
