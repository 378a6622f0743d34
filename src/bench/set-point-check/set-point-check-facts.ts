import { type CheckedPart, checkedParts } from '../../knowledge/part-offset.ts';
import { aboveZero, type Fact, type RunOf, zeroOrMore } from '../facts/fact.ts';

const checkedPart: Fact<CheckedPart> = {
  what: 'part whose set point was checked',
  form: { choices: checkedParts },
  example: 'nozzle',
  flag: 'part',
  statedIn: 'trial',
  place: 'checkedPart',
  read: (trial) => trial.checkedPart,
};

/** Step of the thermometer's display, K. */
const thermometerResolution: Fact<number> = {
  what: 'smallest step of the thermometer, default 0.1 K',
  form: { dimension: 'temperatureDifference' },
  example: '0.1 K',
  possible: aboveZero,
  flag: 'resolution',
  statedIn: 'trial',
  place: 'thermometer: {resolution}',
  read: ({ thermometer }) => thermometer?.resolution,
};

/** Largest error of the thermometer either way, K. */
const thermometerAccuracy: Fact<number> = {
  what: 'largest error of the thermometer either way, default 2 K',
  form: { dimension: 'temperatureDifference' },
  example: '2 K',
  possible: zeroOrMore,
  flag: 'accuracy',
  statedIn: 'trial',
  place: 'thermometer: {accuracy}',
  read: ({ thermometer }) => thermometer?.accuracy,
};

/** Step of the hygrometer's display, as a share. */
const hygrometerResolution: Fact<number> = {
  what: 'smallest step of the hygrometer, default 1 %',
  form: { dimension: 'ratio' },
  example: '1 %',
  possible: aboveZero,
  flag: 'humidity-resolution',
  statedIn: 'trial',
  place: 'hygrometer: {resolution}',
  read: ({ hygrometer }) => hygrometer?.resolution,
};

/** Largest error of the hygrometer either way, as a share. */
const hygrometerAccuracy: Fact<number> = {
  what: 'largest error of the hygrometer either way, default 3 %',
  form: { dimension: 'ratio' },
  example: '3 %',
  possible: zeroOrMore,
  flag: 'humidity-accuracy',
  statedIn: 'trial',
  place: 'hygrometer: {accuracy}',
  read: ({ hygrometer }) => hygrometer?.accuracy,
};

/** How far settled readings may be from their mean, K. */
const settledWithin: Fact<number> = {
  what: 'how far settled readings may be from their mean, default 2 K',
  form: { dimension: 'temperatureDifference' },
  example: '2 K',
  flag: 'settled',
  statedIn: 'trial',
  place: 'settledWithin',
  read: (trial) => trial.settledWithin,
};

/** What is known of a check of set points besides its readings. */
export const setPointCheckFacts = {
  checkedPart,
  thermometerResolution,
  thermometerAccuracy,
  hygrometerResolution,
  hygrometerAccuracy,
  settledWithin,
};

export type SetPointCheckRun = RunOf<typeof setPointCheckFacts>;
