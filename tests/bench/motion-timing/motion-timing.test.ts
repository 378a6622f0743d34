import { describe, expect, test } from 'vitest';
import { reduceMotionTiming } from '../../../src/bench/motion-timing/reduce-motion-timing.ts';
import { observationsOf, resultOf } from '../observations-of.ts';

interface Machine {
  readonly speed: number;
  readonly acceleration: number;
  readonly pause: number;
}

const run = { commandedAcceleration: 6000, clockResolution: 0.01, clockAccuracy: 0.02 };
const lengths = [1, 2, 4, 8, 20, 50, 120];

/** Time of one move by the formulas of school. */
function secondsOf(length: number, { speed, acceleration, pause }: Machine): number {
  const touches = length >= speed ** 2 / acceleration;
  return pause + (touches ? length / speed + speed / acceleration : 2 * Math.sqrt(length / acceleration));
}

function timed(machine: Machine, commanded: readonly number[], shifts: (speed: number) => number = () => 0) {
  const rows = commanded.flatMap((speed) => lengths.map((length) => ({ speed, length })));
  const each = rows.map(({ speed, length }) =>
    secondsOf(length, { ...machine, speed: Math.min(speed, machine.speed) }),
  );
  const moves = each.map((seconds) => Math.round(40 / seconds));
  return observationsOf({
    moveLength: rows.map(({ length }) => length),
    commandedSpeed: rows.map(({ speed }) => speed),
    moves,
    duration: each.map((seconds, index) => (moves[index] ?? 0) * seconds + 0.05 * Math.sin(7 * index)),
    positionShift: rows.map(({ speed }) => shifts(speed)),
  });
}

const machine = { speed: 300, acceleration: 5000, pause: 0.01 };

describe('timed moves', () => {
  const reduced = reduceMotionTiming(timed(machine, [150, 300]), run);

  test('give speed, acceleration and pause of the machine', () => {
    expect(resultOf(reduced, 'reachedSpeed').value).toBeCloseTo(300, -0.5);
    expect(resultOf(reduced, 'reachedAcceleration').value / 5000).toBeCloseTo(1, 1.5);
    expect(resultOf(reduced, 'turnPause').value).toBeCloseTo(0.01, 3);
  });

  test('say that an acceleration was not reached', () => {
    expect(reduced.ok && reduced.value.warnings).toEqual([
      expect.stringContaining('mm/s2 where 6000 mm/s2 was commanded'),
    ]);
  });

  test('do not depend on the order of the rows', () => {
    const { columns } = timed(machine, [150, 300]);
    const turned = Object.fromEntries(
      Object.entries(columns).map(([name, values]) => [name, values.toReversed()]),
    );
    expect(resultOf(reduceMotionTiming(observationsOf(turned), run), 'reachedSpeed')).toEqual(
      resultOf(reduced, 'reachedSpeed'),
    );
  });

  test('draw the time of a move against its length', () => {
    const curve = reduced.ok ? reduced.value.curve : null;
    expect(curve?.x.quantity).toBe('moveLength');
    const last = curve?.fit.at(-1);
    expect(last?.y).toBeCloseTo(secondsOf(120, machine), 2);
  });

  test('show a controller that keeps to a speed of its own', () => {
    const capped = reduceMotionTiming(timed({ ...machine, speed: 240 }, [150, 300]), run);
    expect(resultOf(capped, 'reachedSpeed').interval.high).toBeLessThan(250);
    expect(capped.ok && capped.value.warnings.join()).toContain('where 300 mm/s was commanded');
  });
});

describe('lost steps', () => {
  const lost = reduceMotionTiming(
    timed(machine, [150, 200, 300], (speed) => (speed === 300 ? 1.2 : 0.02)),
    run,
  );

  test('leave out the settings at which they were lost', () => {
    expect(resultOf(lost, 'reachedSpeed').value).toBeCloseTo(200, -0.5);
    expect(lost.ok && lost.value.warnings[0]).toBe(
      'The position was lost at 300 mm/s and 6000 mm/s2, by 1.2 mm: settings at least as hard are left out, and are not held.',
    );
  });

  test('at every setting leave nothing to reduce', () => {
    expect(
      reduceMotionTiming(
        timed(machine, [150, 300], () => 1.2),
        run,
      ),
    ).toMatchObject({
      ok: false,
      error: [{ code: 'tooFewSteps' }],
    });
  });

  test('are not known of where no position was read', () => {
    const { positionShift: _, ...columns } = timed(machine, [150, 300]).columns;
    const reduced = reduceMotionTiming(observationsOf(columns), run);
    expect(reduced.ok && reduced.value.warnings.at(-1)).toContain('Whether steps were lost is not known');
  });
});

describe('readings that tell nothing', () => {
  const good = timed(machine, [150, 300]);
  const changed = (column: string, change: (value: number, index: number) => number) =>
    observationsOf({ ...good.columns, [column]: (good.columns[column] ?? []).map(change) });

  test.each([
    [
      'only long moves at one speed',
      changed('moveLength', (_, index) => 200 + (index % 7)),
      'implausibleReading',
    ],
    ['a fraction of a move', changed('moves', (value) => value + 0.5), 'badSetting'],
    ['minutes for seconds', changed('duration', (value) => value / 60), 'implausibleReading'],
    ['one length', changed('moveLength', () => 2), 'tooFewSteps'],
    ['no time', changed('duration', () => 0), 'notPositive'],
  ])('are refused: %s', (_, observations, code) => {
    const reduced = reduceMotionTiming(observations, run);
    expect(reduced.ok ? [] : reduced.error.map((problem) => problem.code)).toContain(code);
  });

  test('are refused where no move is short enough to tell an acceleration', () => {
    const speeds = Array.from({ length: 8 }, () => 300);
    const moveLength = [100, 110, 120, 130, 140, 150, 160, 170];
    const observations = observationsOf({
      moveLength,
      commandedSpeed: speeds,
      moves: speeds.map(() => 100),
      duration: moveLength.map((length) => 100 * secondsOf(length, machine)),
    });
    expect(reduceMotionTiming(observations, run)).toMatchObject({
      ok: false,
      error: [{ code: 'indistinct' }],
    });
  });

  test('are wider, with a warning, where the moves of a row are miscounted', () => {
    const width = (observations: typeof good) => {
      const { interval } = resultOf(reduceMotionTiming(observations, run), 'reachedSpeed');
      return (interval.high ?? 0) - (interval.low ?? 0);
    };
    const slipped = changed('moves', (value, index) => (index === 9 ? value + 40 : value));
    expect(width(slipped)).toBeGreaterThan(5 * width(good));
    const reduced = reduceMotionTiming(slipped, run);
    expect(reduced.ok && reduced.value.warnings[0]).toContain('more than a hand at a stop watch');
  });
});
