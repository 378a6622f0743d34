import { describe, expect, test } from 'vitest';
import { reduceSoundLevel } from '../../../src/bench/sound-level/reduce-sound-level.ts';
import { observationsOf, resultOf } from '../observations-of.ts';

const run = { backgroundLevel: 30, meterClass: 'class2', levelResolution: 0.1, roomCorrection: 0 } as const;
const inARoom = { backgroundLevel: 30, meterClass: 'class2', levelResolution: 0.1 } as const;
const sum = (one: number, other: number) => 10 * Math.log10(10 ** (one / 10) + 10 ** (other / 10));

describe('a sound survey', () => {
  test('brings readings at other distances to 1 m, 6 dB a doubling', () => {
    const readings = observationsOf({ distance: [1000, 2000, 4000], soundLevel: [60, 53.979, 47.959] });
    expect(resultOf(reduceSoundLevel(readings, run), 'soundLevel').value).toBeCloseTo(60, 2);
  });

  test('gives the sound power of the hemisphere', () => {
    const readings = observationsOf({ distance: [1000, 1000, 1000], soundLevel: [60, 60, 60] });
    const power = resultOf(reduceSoundLevel(readings, run), 'soundPower').value;
    expect(10 * Math.log10(power / 1e-12)).toBeCloseTo(60 + 10 * Math.log10(2 * Math.PI), 3);
  });

  test('averages by energy: the louder side counts more', () => {
    const readings = observationsOf({ distance: [1000, 1000, 1000], soundLevel: [50, 50, 60] });
    const level = resultOf(reduceSoundLevel(readings, run), 'soundLevel').value;
    expect(level).toBeCloseTo(10 * Math.log10((2e5 + 1e6) / 3), 3);
  });

  test('takes the room off where it is 3 to 10 dB below', () => {
    const room = 44;
    const readings = observationsOf({
      distance: [1000, 1000, 1000],
      soundLevel: [50, 50, 50].map((level) => sum(level, room)),
      background: [room, room, room],
    });
    expect(resultOf(reduceSoundLevel(readings, { roomCorrection: 0 }), 'soundLevel').value).toBeCloseTo(
      50,
      3,
    );
  });

  test('leaves out readings less than 3 dB above the room, and says so', () => {
    const readings = observationsOf({
      distance: [1000, 1000, 1000, 4000],
      soundLevel: [55, 55, 55, 42],
      background: [40, 40, 40, 40],
    });
    const reduced = reduceSoundLevel(readings, run);
    expect(resultOf(reduced, 'soundLevel').value).toBeCloseTo(55, 3);
    expect(reduced.ok && reduced.value.warnings[0]).toContain(
      '1 of 4 readings are less than 3 dB above the background',
    );
  });

  test('has no result where the room is too loud', () => {
    const readings = observationsOf({ distance: [1000, 1000, 1000], soundLevel: [42, 42, 42] });
    expect(reduceSoundLevel(readings, { ...run, backgroundLevel: 40 })).toMatchObject({
      ok: false,
      error: [{ code: 'backgroundTooLoud' }],
    });
  });

  test.each([
    [
      'no level of the room',
      observationsOf({ distance: [1, 1, 1], soundLevel: [50, 50, 50] }),
      {},
      'missingFact',
    ],
    [
      'a room that is louder',
      observationsOf({ distance: [1000, 1000, 1000], soundLevel: [30, 50, 50], background: [50, 30, 30] }),
      {},
      'louderBackground',
    ],
    ['two readings', observationsOf({ distance: [1000, 1000], soundLevel: [50, 51] }), run, 'tooFewSteps'],
  ])('with %s is refused', (_, readings, facts, code) => {
    expect(reduceSoundLevel(readings, facts)).toMatchObject({ ok: false, error: [{ code }] });
  });

  test('is less sure with a meter that has no class', () => {
    const readings = observationsOf({ distance: [1000, 1000, 1000], soundLevel: [50, 50, 50] });
    const high = (meterClass: 'class2' | 'unclassed') =>
      resultOf(reduceSoundLevel(readings, { ...run, meterClass }), 'soundLevel').interval.high;
    expect(high('unclassed')).toBeGreaterThan(high('class2') ?? Number.NaN);
  });

  test('takes off what the walls send back, more of it farther away', () => {
    // Walls that raise 60 dB by 3 dB at 1 m send back as much as comes directly, and four times as much as that at 2 m.
    const direct = (distance: number) => 1e6 / distance ** 2;
    const readings = observationsOf({
      distance: [1000, 1000, 1000, 2000],
      soundLevel: [1, 1, 1, 2].map((distance) => 10 * Math.log10(direct(distance) + 1e6)),
    });
    const reduced = reduceSoundLevel(readings, { ...run, roomCorrection: 10 * Math.log10(2) });
    expect(resultOf(reduced, 'soundLevel').value).toBeCloseTo(60, 3);
  });

  test('opens downwards where the room is not known, and says so', () => {
    const readings = observationsOf({ distance: [1000, 1000, 1000, 1000], soundLevel: [60, 60.5, 59.5, 60] });
    const ends = (reduced: ReturnType<typeof reduceSoundLevel>) => resultOf(reduced, 'soundLevel').interval;
    const [open, closed] = [reduceSoundLevel(readings, inARoom), reduceSoundLevel(readings, run)];
    expect(60 - (ends(open).low ?? 0)).toBeGreaterThan(9);
    expect((ends(open).high ?? 0) - 60).toBeLessThan(5);
    expect(60 - (ends(closed).low ?? 0)).toBeCloseTo((ends(closed).high ?? 0) - 60, 1);
    expect(open.ok && open.value.warnings[0]).toContain('anything from 0 to 7 dB');
    expect(closed.ok && closed.value.warnings.join()).not.toContain('room correction');
  });

  test('learns of the room from readings at several distances', () => {
    const at = (fall: number) => {
      const readings = observationsOf({
        distance: [1000, 1000, 1000, 4000, 4000, 4000],
        soundLevel: [60, 60, 60, 60 - fall, 60 - fall, 60 - fall],
      });
      return resultOf(reduceSoundLevel(readings, inARoom), 'soundLevel').value;
    };
    // 12 dB is the fall without walls.
    expect(at(12)).toBeGreaterThan(58.5);
    expect(at(4)).toBeLessThan(at(12) - 1);
  });

  test.each([
    ['a negative room correction is refused', -1, { ok: false, error: [{ code: 'badSetting' }] }],
    ['one beyond the survey grade is told', 9, { ok: true }],
  ])('%s', (_, roomCorrection, expected) => {
    const readings = observationsOf({
      distance: [1000, 1000, 1000, 1000, 1000],
      soundLevel: [60, 60, 60, 60, 60],
    });
    const reduced = reduceSoundLevel(readings, { ...run, roomCorrection });
    expect(reduced).toMatchObject(expected);
    if (reduced.ok)
      expect(reduced.value.warnings).toEqual([expect.stringContaining('ISO 3746 holds up to 7 dB')]);
  });
});
