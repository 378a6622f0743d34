import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  lengthToTouchSpeed,
  moveDuration,
  peakSpeedOfMove,
  runUpLength,
  speedAtLayerTime,
} from '../../src/physics/motion.ts';

const length = fc.double({ min: 0.01, max: 500, noNaN: true });
const speed = fc.double({ min: 1, max: 1500, noNaN: true });
const acceleration = fc.double({ min: 100, max: 50_000, noNaN: true });
const slack = 1 + 1e-12;

describe('peakSpeedOfMove', () => {
  it('just touches the speed on a move of twice the run-up', () => {
    fc.assert(
      fc.property(speed, acceleration, (v, a) => {
        expect(peakSpeedOfMove(lengthToTouchSpeed(v, a), a) / v).toBeCloseTo(1, 12);
        expect(lengthToTouchSpeed(v, a)).toBe(2 * runUpLength(v, a));
      }),
    );
  });

  it('is higher for a move that does not begin at rest', () => {
    expect(peakSpeedOfMove(10, 1000, 50)).toBeGreaterThan(peakSpeedOfMove(10, 1000));
  });
});

describe('moveDuration', () => {
  it('never beats the commanded speed, nor the triangle', () => {
    fc.assert(
      fc.property(length, speed, acceleration, (l, v, a) => {
        expect(moveDuration(l, v, a) * slack).toBeGreaterThanOrEqual(l / v);
        expect(moveDuration(l, v, a) * slack).toBeGreaterThanOrEqual(2 * Math.sqrt(l / a));
      }),
    );
  });

  it('does not grow with the commanded speed', () => {
    fc.assert(
      fc.property(length, speed, speed, acceleration, (l, v, more, a) => {
        expect(moveDuration(l, v + more, a)).toBeLessThanOrEqual(moveDuration(l, v, a) * slack);
      }),
    );
  });

  it('does not grow with the speed at the ends', () => {
    fc.assert(
      fc.property(
        length,
        speed,
        acceleration,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (l, v, a, share) => {
          expect(moveDuration(l, v, a, share * v)).toBeLessThanOrEqual(moveDuration(l, v, a) * slack);
        },
      ),
    );
  });

  it('is plain length over speed for a move that never slows', () => {
    expect(moveDuration(30, 60, 1000, 60)).toBeCloseTo(0.5, 12);
  });

  it('takes an end speed above the commanded one as the commanded one', () => {
    expect(moveDuration(30, 60, 1000, 90)).toBeCloseTo(0.5, 12);
  });
});

describe('speedAtLayerTime', () => {
  it('spreads the path of a layer over its shortest time', () => {
    expect(speedAtLayerTime(600, 8)).toBe(75);
  });
});
