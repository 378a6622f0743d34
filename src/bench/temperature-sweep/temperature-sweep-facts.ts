import type { Fact, RunOf } from '../facts/fact.ts';
import { acceptedGrade } from '../steps/graded.ts';

/** Share of the best strength that must be left. */
const acceptedStrength: Fact<number> = {
  what: 'share of the best strength that must be left, default 90 %',
  form: { dimension: 'ratio' },
  example: '90 %',
  flag: 'accepted',
  statedIn: 'trial',
  place: 'acceptedStrength',
  read: (trial) => trial.acceptedStrength,
};

/** What is known of a temperature sweep besides its readings. */
export const temperatureSweepFacts = { acceptedStrength, acceptedGrade };

export type TemperatureSweepRun = RunOf<typeof temperatureSweepFacts>;
