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

/** mm/s2, where the whole run kept to one. */
const acceleration: Fact<number> = {
  what: 'acceleration of the axes',
  form: { dimension: 'acceleration' },
  example: '8000 mm/s2',
  flag: 'acceleration',
  statedIn: 'trial',
  place: 'conditions: {acceleration}',
  read: ({ conditions }) => conditions.acceleration,
};

/** What is known of a contour ladder besides its readings. */
export const contourLadderFacts = { acceptedRipple, acceptedGrade, lengthResolution, acceleration };

export type ContourLadderRun = RunOf<typeof contourLadderFacts>;
