import type { Trial } from '../../registry/generated/documents.ts';
import { aboveZero, type Fact, type RunOf } from '../facts/fact.ts';

/** Class of a sound level meter by IEC 61672-1. */
type MeterClass = NonNullable<Trial['soundMeter']>['class'];

/** Level of the room with the machine off, dB. */
const backgroundLevel: Fact<number> = {
  what: 'level of the room with the machine off',
  form: { dimension: 'soundLevel' },
  example: '32 dB[SPL]{A}',
  flag: 'background',
  statedIn: 'trial',
  place: 'backgroundLevel',
  read: (trial) => trial.backgroundLevel,
};

/** By how much the walls raise the level at 1 m, dB: K₂ of ISO 3746 for a hemisphere of 1 m. */
const roomCorrection: Fact<number> = {
  what: 'by how much the walls raise the level at 1 m (K2 of ISO 3746), default anything from 0 to 7 dB',
  form: { dimension: 'soundLevel' },
  example: '3 dB[SPL]{A}',
  // ISO 3746 goes up to 7 dB; in a bathroom it may be more, and beyond this nothing of the source is left.
  possible: { holds: (value) => value <= 20, words: '20 dB at most' },
  flag: 'room',
  statedIn: 'trial',
  place: 'roomCorrection',
  read: (trial) => trial.roomCorrection,
};

/** Step of the sound level meter's display, dB. */
const levelResolution: Fact<number> = {
  what: 'smallest step of the meter, default 1 dB',
  form: { dimension: 'soundLevel' },
  example: '0.1 dB[SPL]{A}',
  possible: aboveZero,
  flag: 'resolution',
  statedIn: 'trial',
  place: 'soundMeter: {resolution}',
  read: ({ soundMeter }) => soundMeter?.resolution,
};

const meterClass: Fact<MeterClass> = {
  what: 'class of the sound level meter, default unclassed',
  form: { choices: ['class1', 'class2', 'unclassed'] satisfies readonly MeterClass[] },
  example: 'class2',
  flag: 'meter',
  statedIn: 'trial',
  place: 'soundMeter: {class}',
  read: ({ soundMeter }) => soundMeter?.class,
};

/** What is known of a survey of sound besides its readings. */
export const soundLevelFacts = { backgroundLevel, roomCorrection, levelResolution, meterClass };

export type SoundLevelRun = RunOf<typeof soundLevelFacts>;
