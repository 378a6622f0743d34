import type { Fact, RunOf } from '../facts/fact.ts';
import { lengthResolution } from '../facts/instrument-facts.ts';
import { acceptedGrade } from '../steps/graded.ts';

/** Size of the defect that is accepted, mm. */
const acceptedDefect: Fact<number> = {
  what: 'accepted size of the defect',
  form: { dimension: 'length' },
  example: '0.3 mm',
  flag: 'accepted',
  statedIn: 'trial',
  place: 'acceptedDefect',
  read: (trial) => trial.acceptedDefect,
};

/** What is known of a ladder of a setting besides its readings. */
export const settingLadderFacts = { acceptedDefect, acceptedGrade, lengthResolution };

export type SettingLadderRun = RunOf<typeof settingLadderFacts>;
