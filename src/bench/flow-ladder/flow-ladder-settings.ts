import { usualMassResolution } from '../facts/instrument-facts.ts';
import type { FlowLadderRun } from './flow-ladder-facts.ts';

/** Accepted deficit of a ladder that states none, as a fraction: common practice, no source. */
export const usualAcceptedDeficit = 0.05;

/**
 * Relative standard uncertainty of the fed length unless given: half a millimetre in half a metre (common practice,
 * no source).
 */
export const usualFeedLengthUncertainty = 0.001;

/** What a flow ladder's readings are judged by. */
export interface FlowLadderSettings {
  /** Nominal, mm. An error in it cancels. */
  readonly filamentDiameter: number;
  /** Nominal, g/mm3. An error in it cancels. */
  readonly density: number;
  /** Share of the flow that may be missing at the limit, above 0 and at most 0.5. */
  readonly acceptedDeficit: number;
  /** Step of the scale's display, g. */
  readonly massResolution: number;
  /**
   * Relative standard uncertainty of the fed length from one step to the next; what all steps share cancels.
   * `usualFeedLengthUncertainty` unless given.
   */
  readonly feedLengthUncertainty?: number;
  /** Commanded flow at which the run was halted, mm3/s; readings at this flow and above do not count. */
  readonly haltedAt?: number;
}

/** The settings of a run; what a run must have and has not is no number, which the checks refuse. */
export function flowLadderSettings(run: FlowLadderRun): FlowLadderSettings {
  const { feedLengthUncertainty, haltedAt } = run;
  return {
    filamentDiameter: run.filamentDiameter ?? Number.NaN,
    density: run.density ?? Number.NaN,
    acceptedDeficit: run.acceptedDeficit ?? usualAcceptedDeficit,
    massResolution: run.massResolution ?? usualMassResolution,
    ...(feedLengthUncertainty !== undefined && { feedLengthUncertainty }),
    ...(haltedAt !== undefined && { haltedAt }),
  };
}
