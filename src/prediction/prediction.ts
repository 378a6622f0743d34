import type { CubicMillimetresPerSecond, Millimetres, Range } from '../units/canonical.ts';
import type { MeltCapacity } from './melt-capacity.ts';
import type { SiblingTrial } from './sibling-trials.ts';
import type { StatedFlow } from './stated-flow.ts';

/** A flow limit that is expected. */
export interface Estimate {
  /** What it was drawn from. */
  readonly from: 'trials' | 'stated' | 'conduction';
  /** The trials that it was drawn from; none where it was not. */
  readonly trials: readonly string[];
  readonly value: CubicMillimetresPerSecond;
  /** Where the limit is thought to lie, in mm³/s: judgement, not a coverage interval. */
  readonly range: Range;
}

/** A flow that cannot be exceeded whatever the melt does. */
export interface FlowCap {
  readonly by: 'heater' | 'drive' | 'traction';
  readonly flow: CubicMillimetresPerSecond;
  readonly text: string;
}

/** The flow limit that a pairing is expected to have, with everything that speaks for it. */
export interface Prediction extends Estimate {
  /** What the estimate was cut down to, if it was. */
  readonly cappedBy: FlowCap | null;
  readonly siblings: readonly SiblingTrial[];
  readonly stated: StatedFlow | null;
  readonly capacity: (MeltCapacity & { readonly meltZoneLength: Millimetres }) | null;
  readonly caps: readonly FlowCap[];
}
