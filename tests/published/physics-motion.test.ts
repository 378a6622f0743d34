import { describe, expect, it } from 'vitest';
import { lengthToTouchSpeed, moveDuration, peakSpeedOfMove, runUpLength } from '../../src/physics/motion.ts';

const unlimited = Number.POSITIVE_INFINITY;

// OpenStax, University Physics vol. 1, chapter 3, examples by number; metres turned into millimetres.
// A one-way run over a length is the first half of a move of twice that length.
describe('OpenStax University Physics', () => {
  it('example 3.7: 70.0 m/s to 10.0 m/s at -1.50 m/s² takes 40.0 s', () => {
    const length = 2 * (70_000 + 10_000) * 0.5 * 40;
    expect(moveDuration(length, unlimited, 1500, 10_000) / 2).toBeCloseTo(40, 9);
    expect(peakSpeedOfMove(length, 1500, 10_000)).toBeCloseTo(70_000, 6);
  });

  it('example 3.8: 402 m from rest at 26.0 m/s² takes 5.56 s', () => {
    expect(moveDuration(2 * 402_000, unlimited, 26_000) / 2).toBeCloseTo(5.56, 2);
  });

  it('example 3.9: 402 m from rest at 26.0 m/s² ends at 145 m/s', () => {
    expect(peakSpeedOfMove(2 * 402_000, 26_000) / 1000).toBeCloseTo(145, 0);
    expect(runUpLength(peakSpeedOfMove(2 * 402_000, 26_000), 26_000)).toBeCloseTo(402_000, 6);
  });

  it('example 3.11: 200 m from 10.0 m/s at 2.00 m/s² takes 10.0 s', () => {
    expect(moveDuration(2 * 200_000, unlimited, 2000, 10_000) / 2).toBeCloseTo(10, 9);
  });

  it('example 3.13: 50 m from rest at 4 m/s² takes 5 s', () => {
    expect(moveDuration(2 * 50_000, unlimited, 4000) / 2).toBeCloseTo(5, 9);
  });

  it('example 3.14: 98 m down from 4.9 m/s at 9.8 m/s² takes 4.0 s and ends at 44.1 m/s', () => {
    expect(moveDuration(2 * 98_000, unlimited, 9800, 4900) / 2).toBeCloseTo(4, 9);
    expect(peakSpeedOfMove(2 * 98_000, 9800, 4900)).toBeCloseTo(44_100, 6);
  });
});

describe('trapezoid of speed, rest to rest', () => {
  it.each([
    [100, 200, 1000, 0.7],
    [40, 200, 1000, 0.4],
    [10, 200, 1000, 0.2],
    [200, 300, 3000, 0.766667],
  ])('%d mm at %d mm/s and %d mm/s² takes %d s', (length, speed, acceleration, duration) => {
    // Recomputed from t = d/v + v/a, or 2 sqrt(d/a) where v²/a > d.
    expect(moveDuration(length, speed, acceleration)).toBeCloseTo(duration, 6);
  });

  it('of 10 mm at 1000 mm/s² peaks at 100 mm/s, of 40 mm at 200 mm/s', () => {
    expect(peakSpeedOfMove(10, 1000)).toBeCloseTo(100, 9);
    expect(peakSpeedOfMove(40, 1000)).toBeCloseTo(200, 9);
  });
});

describe('run-up', () => {
  it.each([
    [300, 3000, 15],
    [500, 5000, 25],
  ])('to %d mm/s at %d mm/s² takes %d mm', (speed, acceleration, length) => {
    // v²/2a, as in example 3.9.
    expect(runUpLength(speed, acceleration)).toBeCloseTo(length, 9);
  });

  it('a stop-to-stop move must be 50 mm to touch 500 mm/s at 5000 mm/s²', () => {
    expect(lengthToTouchSpeed(500, 5000)).toBeCloseTo(50, 9);
  });
});
