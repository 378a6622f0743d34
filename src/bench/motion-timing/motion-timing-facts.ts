import type { Fact, RunOf } from '../facts/fact.ts';
import { lengthResolution } from '../facts/instrument-facts.ts';

/** Acceleration that the controller was told, mm/s2. */
const commandedAcceleration: Fact<number> = {
  what: 'commanded acceleration, where no column gives it',
  form: { dimension: 'acceleration' },
  example: '8000 mm/s2',
  flag: 'acceleration',
  statedIn: 'trial',
  place: 'conditions: {acceleration}',
  read: (trial) => trial.conditions.acceleration,
};

/** s; no clock that times shuttles is coarser, or further off (common practice, no source). */
const longestStep = 60;

/** Step of the clock's display, s. */
const clockResolution: Fact<number> = {
  what: 'smallest step of the clock, default 0.01 s',
  form: { dimension: 'time' },
  example: '0.01 s',
  possible: { holds: (value) => value > 0 && value <= longestStep, words: 'above 0 and up to 60 s' },
  flag: 'clock-resolution',
  statedIn: 'trial',
  place: 'clock: {resolution}',
  read: ({ clock }) => clock?.resolution,
};

/** By how much all times may be too long or too short alike, s. */
const clockAccuracy: Fact<number> = {
  what: 'how much all times may be off alike, default 0.1 s as with a stop watch in the hand',
  form: { dimension: 'time' },
  example: '0.1 s',
  possible: { holds: (value) => value >= 0 && value <= longestStep, words: '0 s to 60 s' },
  flag: 'clock-accuracy',
  statedIn: 'trial',
  place: 'clock: {accuracy}',
  read: ({ clock }) => clock?.accuracy,
};

/** What is known of timed shuttles besides the readings. */
export const motionTimingFacts = { commandedAcceleration, clockResolution, clockAccuracy, lengthResolution };

export type MotionTimingRun = RunOf<typeof motionTimingFacts>;
