import type { Trial } from '../../registry/generated/documents.ts';
import type { Fact, RunOf } from '../facts/fact.ts';

/** Class of a sound level meter by IEC 61672-1. */
export type MeterClass = NonNullable<Trial['soundMeter']>['class'];

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

/** Step of the sound level meter's display, dB. */
const levelResolution: Fact<number> = {
  what: 'smallest step of the meter, default 1 dB',
  form: { dimension: 'soundLevel' },
  example: '0.1 dB[SPL]{A}',
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
export const soundLevelFacts = { backgroundLevel, levelResolution, meterClass };

export type SoundLevelRun = RunOf<typeof soundLevelFacts>;
