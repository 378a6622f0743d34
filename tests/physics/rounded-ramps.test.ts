import { describe, expect, test } from 'vitest';
import { moveDuration } from '../../src/physics/motion.ts';
import { roundedMoveDuration } from '../../src/physics/rounded-ramps.ts';

describe('a move with limited jerk', () => {
  test('takes as long as one with steady ramps where nothing is rounded', () => {
    expect(roundedMoveDuration({ length: 40, speed: 300, acceleration: 5000, rounding: 0 })).toBe(
      moveDuration(40, 300, 5000),
    );
  });

  test('takes the rounding longer where it reaches its speed', () => {
    const rounded = roundedMoveDuration({ length: 100, speed: 300, acceleration: 5000, rounding: 0.02 });
    expect(rounded).toBeCloseTo(100 / 300 + 300 / 5000 + 0.02, 12);
  });

  test('takes the cube root of 32 times length over jerk where it never reaches its acceleration', () => {
    // Four equal phases of constant jerk over a length L: t = (32·L/j)^(1/3), by integration of j three times.
    const jerk = 5000 / 0.1;
    const rounded = roundedMoveDuration({ length: 1, speed: 300, acceleration: 5000, rounding: 0.1 });
    expect(rounded).toBeCloseTo(Math.cbrt(32 / jerk), 12);
  });

  test('grows with the length without a jump through all its forms', () => {
    const times = Array.from({ length: 2000 }, (_, index) =>
      roundedMoveDuration({ length: 0.02 * (index + 1), speed: 200, acceleration: 4000, rounding: 0.03 }),
    );
    const gains = times.slice(1).map((time, index) => time - (times[index] ?? 0));
    expect(Math.min(...gains)).toBeGreaterThan(0);
    const [first = 0, ...later] = gains;
    expect(Math.max(...later)).toBeLessThan(first);
  });
});
