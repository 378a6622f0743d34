import { conditionsOf } from '../../knowledge/pairing.ts';
import { lengthToTouchSpeed, moveDuration, peakSpeedOfMove } from '../../physics/motion.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Result, refusal, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { PlanRow, RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

/** Lengths as shares of the shortest move that touches the speed: too short for it, and several times as long. */
const shares = [0.1, 0.2, 0.4, 0.8, 2, 4, 8];
/** Share of an axis that a move may use. */
const usableShare = 0.8;
/** How many times as long as a move that touches the highest speed the longest one is at least, so that its time tells that speed. */
const leastHeld = 4;
/** mm; a shorter move is no test of an axis. */
const shortest = 1;
/** s; so long that the error of a hand at a stop watch is half a per cent (common practice, no source). */
const rowTime = 40;
const speedShares = [0.5, 1];

/** Moves to and fro over short and long lengths, at the top speed and at half of it. */
export function layOutMotionTiming({ pairing }: LayoutRequest): Result<RunLayout, PlanProblem> {
  const { machine } = pairing;
  const conditions = conditionsOf(pairing);
  const top = chooseStatement(machine.data.topSpeed, conditions);
  const acceleration = chooseStatement(machine.data.acceleration, conditions);
  if (top === null || acceleration === null) {
    return refusal(
      'nothingKnown',
      `Top speed and acceleration of ${machine.id} are not both known for this pairing`,
      `State them in machines/${machine.id}.yaml.`,
    );
  }
  const { x, y } = machine.data.envelope;
  const longest = usableShare * Math.min(x, y);
  const timed = timedSpeed(top.value, acceleration.value, longest);
  return success({
    name: 'Timed moves',
    idWord: 'motion',
    conditions: [`acceleration: ${shown(acceleration.value, 'acceleration')}`],
    keys: ['gauge: {resolution: 0.01 mm}', 'clock: {resolution: 0.01 s, accuracy: 0.1 s}'],
    sections: settingsSections({
      settings: [
        `top speed ${shown(top.value, 'speed')} (${top.basis})${timed < top.value ? `, for which the axis is too short at this acceleration: ${shown(timed, 'speed')} instead` : ''}, and half of it`,
        `acceleration ${shown(acceleration.value, 'acceleration')} (${acceleration.basis}) for all rows`,
        `the shortest move that touches ${shown(timed, 'speed')} is ${shown(lengthToTouchSpeed(timed, acceleration.value), 'length')}`,
        `moves along one axis, in its middle, no longer than ${shown(longest, 'length')}`,
      ],
      howTo: [
        'let the machine repeat the moves of a row to and fro, cold and without filament moving; to and fro are two moves',
        'time from the first to the last movement, with a stop watch or from a video; write the number of moves that were made',
        'read the position at a stop before and after the row with a dial gauge or calipers, and write the difference',
        'begin with the lower speed, and stop at once if the axis knocks or loses steps',
      ],
      atHand: [
        'a stop watch or a camera; a dial gauge or calipers at a fixed stop',
        'a hand at the switch; eye protection',
      ],
    }),
    given: [
      { name: 'commandedSpeed', unit: 'mm/s' },
      { name: 'moveLength', unit: 'mm' },
      { name: 'moves', unit: '{count}' },
    ],
    read: [
      { name: 'duration', unit: 's' },
      { name: 'positionShift', unit: 'mm' },
    ],
    rows: speedShares.flatMap((share) =>
      rowsAt(Math.round(timed * share), timed, acceleration.value, longest),
    ),
    repeats: 2,
  });
}

/** The top speed in mm/s, or, where the longest move would hardly hold it, one that it holds, even if ramps are slow and rounded. */
function timedSpeed(top: number, acceleration: number, longest: number): number {
  return Math.min(top, Math.floor(peakSpeedOfMove(longest / leastHeld, acceleration)));
}

function rowsAt(speed: number, top: number, acceleration: number, longest: number): PlanRow[] {
  const touch = lengthToTouchSpeed(top, acceleration);
  const lengths = shares.map((share) => Math.round(Math.min(longest, Math.max(shortest, share * touch))));
  const apart = lengths.filter((length, index) => length > 1.1 * (lengths[index - 1] ?? 0));
  return apart.map((length) => {
    const each = moveDuration(length, speed, acceleration);
    return { given: [speed, length, Math.max(10, Math.round(rowTime / each / 10) * 10)], hints: [] };
  });
}
