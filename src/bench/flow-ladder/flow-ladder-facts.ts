import type { Fact, RunOf } from '../facts/fact.ts';
import { filamentDensity, filamentDiameter } from '../facts/filament-facts.ts';
import { massResolution } from '../facts/instrument-facts.ts';

/** Share of the flow that may be missing. */
const acceptedDeficit: Fact<number> = {
  what: 'accepted flow deficit, default 5 %',
  form: { dimension: 'ratio' },
  example: '5 %',
  flag: 'tolerance',
  statedIn: 'trial',
  place: 'acceptedDeficit',
  read: (trial) => trial.acceptedDeficit,
};

/** Relative standard uncertainty of the fed length. */
const feedLengthUncertainty: Fact<number> = {
  what: 'relative standard uncertainty of the fed length, default 0.1 %',
  form: { dimension: 'ratio' },
  example: '0.2 %',
  flag: 'feed-uncertainty',
  statedIn: 'trial',
  place: 'feedLengthUncertainty',
  read: (trial) => trial.feedLengthUncertainty,
};

/** Commanded flow at which the run was halted, mm3/s. */
const haltedAt: Fact<number> = {
  what: 'commanded flow at which the run was halted',
  form: { dimension: 'volumeFlow' },
  example: '46 mm3/s',
  flag: 'halted',
  statedIn: 'trial',
  place: 'events',
  read: ({ events = [] }) =>
    events.length === 0 ? undefined : Math.min(...events.map(({ commandedFlow }) => commandedFlow)),
};

/** What is known of a flow ladder besides its readings. */
export const flowLadderFacts = {
  filamentDiameter,
  density: filamentDensity,
  acceptedDeficit,
  massResolution,
  feedLengthUncertainty,
  haltedAt,
};

export type FlowLadderRun = RunOf<typeof flowLadderFacts>;
