import type { MeltSetup } from '../../prediction/melt-setup.ts';
import type { NozzleWindow } from '../../prediction/nozzle-window.ts';
import type { Prediction } from '../../prediction/prediction.ts';
import type { CubicMillimetresPerSecond, Grams, Millimetres, Seconds } from '../../units/canonical.ts';
import type { Piece } from './feed-length.ts';
import type { LadderFeed, LadderSteps } from './ladder-steps.ts';

/** A flow ladder with its numbers, before it is put into words. */
export interface LadderPlan {
  readonly setup: MeltSetup;
  readonly prediction: Prediction;
  readonly window: NozzleWindow;
  /** Why the nozzle temperature is what it is. */
  readonly temperatureReason: string;
  /** Temperatures for further ladders, °C, for the limit against the temperature. */
  readonly series: readonly number[];
  readonly steps: LadderSteps;
  readonly feeds: readonly LadderFeed[];
  readonly repeats: number;
  readonly resolution: Grams;
  readonly piece: Piece;
  /** Highest flow that heater and drive allow. */
  readonly highest: CubicMillimetresPerSecond;
  readonly totals: {
    /** Strand for all pieces, with what is purged before each. */
    readonly length: Millimetres;
    readonly mass: Grams;
    readonly feeding: Seconds;
    /** With warming up, cutting, weighing and writing down. */
    readonly bench: Seconds;
  };
}
