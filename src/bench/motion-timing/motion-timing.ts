import { adoptableAt } from '../adopt/adoptable-limit.ts';
import { machineKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { doubtfulTimes } from './doubtful-times.ts';
import { motionTimingFacts } from './motion-timing-facts.ts';
import { reduceMotionTiming } from './reduce-motion-timing.ts';

/** Timed moves to and fro: the speed and the acceleration that a machine really reaches. */
export const motionTiming = {
  method: 'motionTiming',
  columns: {
    moveLength: 'length',
    commandedSpeed: 'speed',
    acceleration: 'acceleration',
    moves: 'count',
    duration: 'time',
    positionShift: 'length',
  },
  optional: ['acceleration', 'positionShift'],
  read: ['duration', 'positionShift'],
  requiredKeys: [machineKey],
  facts: motionTimingFacts,
  requiredFacts: [],
  reduce: reduceMotionTiming,
  doubtful: doubtfulTimes,
  results: {
    reachedSpeed: {},
    reachedAcceleration: {},
    turnPause: { name: 'pause at each turn', unit: 'ms' },
  },
  openWords: usualOpenWords,
  adoptable: [
    adoptableAt('machine', 'topSpeed', { quantity: 'reachedSpeed', holdsFor: [] }),
    adoptableAt('machine', 'acceleration', { quantity: 'reachedAcceleration', holdsFor: [] }),
  ],
  cautions: [
    'Keep hands, hair and cables away while the axes move, and stay within reach of the switch: long fast moves at the limit may lose steps or strike the end of an axis.',
  ],
} as const satisfies Method<typeof motionTimingFacts>;
