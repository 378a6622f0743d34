import { describe, expect, test } from 'vitest';
import { reduceSoundLevel } from '../../../src/bench/sound-level/reduce-sound-level.ts';
import { observationsOf, resultOf } from '../observations-of.ts';

const run = { backgroundLevel: 30, meterClass: 'class2', levelResolution: 0.1 } as const;
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
    expect(resultOf(reduceSoundLevel(readings, {}), 'soundLevel').value).toBeCloseTo(50, 3);
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
});
