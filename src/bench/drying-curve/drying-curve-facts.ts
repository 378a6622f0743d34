import { type Fact, type RunOf, zeroOrMore } from '../facts/fact.ts';
import { massResolution } from '../facts/instrument-facts.ts';

/** Water that may be left, as a share of the dry mass. */
const residualMoisture: Fact<number> = {
  what: 'water that may be left, as a share of the dry mass',
  form: { dimension: 'ratio' },
  example: '0.02 %',
  flag: 'residual',
  statedIn: 'trial',
  place: 'residualMoisture',
  read: (trial) => trial.residualMoisture,
};

/** Mass of the empty reel that the masses hold, g. */
const reelMass: Fact<number> = {
  what: 'mass of the empty reel, if the readings include it',
  form: { dimension: 'mass' },
  example: '180 g',
  possible: zeroOrMore,
  flag: 'reel',
  statedIn: 'trial',
  place: 'reelMass',
  read: (trial) => trial.reelMass,
};

/** What is known of a drying besides its readings. */
export const dryingCurveFacts = { residualMoisture, reelMass, massResolution };

export type DryingCurveRun = RunOf<typeof dryingCurveFacts>;
