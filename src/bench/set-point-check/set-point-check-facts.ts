import { type CheckedPart, checkedParts } from '../../knowledge/part-offset.ts';
import type { Fact, RunOf } from '../facts/fact.ts';

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
  flag: 'accuracy',
  statedIn: 'trial',
  place: 'thermometer: {accuracy}',
  read: ({ thermometer }) => thermometer?.accuracy,
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
export const setPointCheckFacts = { checkedPart, thermometerResolution, thermometerAccuracy, settledWithin };

export type SetPointCheckRun = RunOf<typeof setPointCheckFacts>;
