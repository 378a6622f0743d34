import { lengthToTouchSpeed } from '../../physics/motion.ts';
import { capitalised, wordsOf } from '../../text/words.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import type { ReducedResult } from '../reduction.ts';
import type { PossibleMotions } from './possible-motions.ts';
import type { Shuttle, ShuttleRun } from './shuttle-run.ts';

/** What there is to say about a run of timed moves. */
interface TimedMoves {
  readonly timed: ShuttleRun;
  readonly lost: readonly Shuttle[];
  readonly possible: PossibleMotions;
  readonly results: readonly ReducedResult[];
  readonly isPositionRead: boolean;
}

/** Probability from which on ramps are said to be rounded. */
const surely = 0.95;
/** s; a hand at a stop watch scatters by less (common practice, no source). */
const largestScatter = 0.4;
/** Share of what was commanded below which it is not reached; a clock and a rule are good to that. */
const reached = 0.98;
const largestRelativeWidth = 0.2;

const speedText = (value: number) => formatQuantity(value, 'speed', { significantDigits: 3 });
const accelerationText = (value: number) => formatQuantity(value, 'acceleration', { significantDigits: 3 });
const timeText = (value: number) => formatQuantity(value, 'time', { significantDigits: 2 });

/** What a reader should know of timed moves before relying on the results, the most serious first. */
export function motionWarnings(all: TimedMoves): string[] {
  return [
    ...lostWarning(all),
    ...scatterWarning(all),
    ...roundingWarning(all),
    ...commandWarnings(all),
    ...pauseWarning(all),
    ...widthWarnings(all),
    ...(all.isPositionRead
      ? []
      : [
          'Whether steps were lost is not known: read a position before and after each row, and write the difference as positionShift.',
        ]),
  ];
}

function lostWarning({ lost }: TimedMoves): string[] {
  const [first] = lost.toSorted(
    (one, other) => one.speed - other.speed || one.acceleration - other.acceleration,
  );
  if (first === undefined) return [];
  const shift = formatQuantity(Math.abs(first.shift ?? 0), 'length', { significantDigits: 2 });
  return [
    `The position was lost at ${speedText(first.speed)} and ${accelerationText(first.acceleration)}, by ${shift}: settings at least as hard are left out, and are not held.`,
  ];
}

function scatterWarning({ timed: { clock }, possible: { best } }: TimedMoves): string[] {
  if (best.scatter <= Math.max(largestScatter, 2 * clock.resolution)) return [];
  return [
    `The times differ from the fitted motion by ${timeText(best.scatter)}, more than a hand at a stop watch: either the number of moves of a row is wrong, or the machine does not move by steady or evenly rounded ramps. The intervals are wider for it.`,
  ];
}

function roundingWarning({ possible: { rounded, best } }: TimedMoves): string[] {
  if (rounded < surely) return [];
  return [
    `The controls round their ramps: the acceleration takes about ${timeText(best.rounding)} to build up, so short moves take longer than the reached acceleration alone would have it.`,
  ];
}

function commandWarnings({ timed: { speeds, accelerations }, results }: TimedMoves): string[] {
  const commanded = [
    ['reachedSpeed', speeds.at(-1) ?? Number.NaN, speedText],
    ['reachedAcceleration', accelerations.at(-1) ?? Number.NaN, accelerationText],
  ] as const;
  return commanded.flatMap(([quantity, asked, text]) => {
    const found = results.find((result) => result.quantity === quantity);
    const { low, high } = found?.interval ?? { low: null, high: null };
    if (found === undefined || low === null || high === null) return [];
    if (high < reached * asked) {
      return [
        `${capitalised(wordsOf(quantity))} is ${text(found.value)} where ${text(asked)} was commanded: the controller has a limit of its own, or a move to and fro was counted as one.`,
      ];
    }
    if (low <= asked / reached) return [];
    return [
      `${capitalised(wordsOf(quantity))} is ${text(found.value)}, more than the commanded ${text(asked)}: check the lengths and the numbers of moves.`,
    ];
  });
}

function pauseWarning({ results }: TimedMoves): string[] {
  const high = results.find(({ quantity }) => quantity === 'turnPause')?.interval.high;
  return high !== undefined && high !== null && high < 0
    ? [
        'The fitted pause is below 0: the controls begin a move at more than standstill, or the clock was stopped early.',
      ]
    : [];
}

function widthWarnings({ results }: TimedMoves): string[] {
  const value = (quantity: string) => results.find((result) => result.quantity === quantity)?.value ?? 0;
  const length = lengthToTouchSpeed(value('reachedSpeed'), value('reachedAcceleration'));
  const text = formatQuantity(length, 'length', { significantDigits: 2 });
  const advice: Readonly<Record<string, string>> = {
    reachedSpeed: `add moves several times as long as ${text}, and more of them per row`,
    reachedAcceleration: `add moves shorter than ${text}, and more of them per row`,
  };
  return results.flatMap(({ quantity, value: middle, interval: { low, high } }) => {
    const help = advice[quantity];
    const isWide = low !== null && high !== null && high - low > largestRelativeWidth * middle;
    return isWide && help !== undefined ? [`The interval of the ${wordsOf(quantity)} is wide: ${help}.`] : [];
  });
}
