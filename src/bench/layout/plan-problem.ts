import type { Problem } from '../../result.ts';

/** Why a run of a pairing cannot be laid out. */
export type PlanProblem = Problem<
  | 'nothingKnown'
  | 'noTemperature'
  | 'outsideWindow'
  | 'tooNarrow'
  | 'softensInDryer'
  | 'noJob'
  | 'unknownSubject'
>;
