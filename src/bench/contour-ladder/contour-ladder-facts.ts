import type { Fact, RunOf } from '../facts/fact.ts';
import { lengthResolution } from '../facts/instrument-facts.ts';
import { acceptedGrade } from '../steps/graded.ts';

/** Amplitude of the accepted ripple, from crest to trough, mm. */
const acceptedRipple: Fact<number> = {
  what: 'accepted ripple',
  form: { dimension: 'length' },
  example: '0.02 mm',
  flag: 'accepted',
  statedIn: 'trial',
  place: 'acceptedRipple',
  read: (trial) => trial.acceptedRipple,
};

/** What is known of a contour ladder besides its readings. */
export const contourLadderFacts = { acceptedRipple, acceptedGrade, lengthResolution };

export type ContourLadderRun = RunOf<typeof contourLadderFacts>;
