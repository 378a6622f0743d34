import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type StraightMove, speedProfile } from '../../src/physics/speed-profile.ts';

const length = fc.double({ min: 0.01, max: 500, noNaN: true });
const speed = fc.double({ min: 1, max: 1500, noNaN: true });
const acceleration = fc.double({ min: 100, max: 50_000, noNaN: true });
const endSpeed = fc.double({ min: 0, max: 1500, noNaN: true });
const move = fc.record({ length, speed, acceleration, entrySpeed: endSpeed, exitSpeed: endSpeed });
const slack = 1 + 1e-9;

const duration = (given: StraightMove) => {
  const { cruise, ramps } = speedProfile(given);
  return cruise + ramps;
};

describe('speedProfile', () => {
  it('never takes less than the length at the commanded speed', () => {
    fc.assert(
      fc.property(move, (given) => {
        expect(duration(given) * slack).toBeGreaterThanOrEqual(given.length / given.speed);
      }),
    );
  });

  it('is never slower with more acceleration', () => {
    fc.assert(
      fc.property(move, acceleration, (given, more) => {
        const faster = { ...given, acceleration: given.acceleration + more };
        expect(duration(faster)).toBeLessThanOrEqual(duration(given) * slack);
      }),
    );
  });

  it('is never faster with a slower commanded speed', () => {
    fc.assert(
      fc.property(move, fc.double({ min: 0.01, max: 1, noNaN: true }), (given, share) => {
        const slower = { ...given, speed: share * given.speed };
        expect(duration(slower) * slack).toBeGreaterThanOrEqual(duration(given));
      }),
    );
  });

  it('is never faster for two moves than for the one that they make up', () => {
    const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(move, share, endSpeed, (given, part, between) => {
        const first = { ...given, length: part * given.length, exitSpeed: between };
        const second = { ...given, length: (1 - part) * given.length, entrySpeed: between };
        // Speeds that the shorter moves cannot keep would be others than those of the whole.
        fc.pre(keepsEnds(given) && keepsEnds(first) && keepsEnds(second));
        expect((duration(first) + duration(second)) * slack).toBeGreaterThanOrEqual(duration(given));
      }),
    );
  });

  it('peaks between its end speeds and the commanded speed', () => {
    fc.assert(
      fc.property(move, (given) => {
        const { peak } = speedProfile(given);
        expect(peak).toBeLessThanOrEqual(given.speed);
        expect(peak * slack).toBeGreaterThanOrEqual(Math.min(given.entrySpeed, given.exitSpeed, given.speed));
      }),
    );
  });

  it('covers its length', () => {
    fc.assert(
      fc.property(move, (given) => {
        fc.pre(keepsEnds(given));
        const { peak, cruise } = speedProfile(given);
        const ends = [given.entrySpeed, given.exitSpeed].map((end) => Math.min(end, given.speed));
        const ramps = ends.map((end) => (peak ** 2 - end ** 2) / (2 * given.acceleration));
        expect((cruise * peak + (ramps[0] ?? 0) + (ramps[1] ?? 0)) / given.length).toBeCloseTo(1, 6);
      }),
    );
  });

  it('slows no more than its length allows', () => {
    const { peak } = speedProfile({
      length: 1,
      speed: 500,
      acceleration: 1000,
      entrySpeed: 500,
      exitSpeed: 0,
    });
    expect(peak).toBeCloseTo(Math.sqrt(2000), 9);
  });
});

/** Whether the length of a move suffices to come from one end speed to the other. */
function keepsEnds({ entrySpeed, exitSpeed, speed: top, acceleration: a, length: l }: StraightMove): boolean {
  const [entry, exit] = [Math.min(entrySpeed, top), Math.min(exitSpeed, top)];
  return Math.abs(entry ** 2 - exit ** 2) <= 2 * a * l;
}
