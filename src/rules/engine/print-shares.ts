/** By which share of it a calculated figure of a print may differ from what was read (common practice, no source). */
export const printShares = {
  /** Twice what the model's equal segments and right angles miss on simulated prints. */
  time: 0.15,
  /** An extruder that is set by eye feeds up to a tenth too much or too little. */
  mass: 0.15,
} as const;

/** A slip that explains what is off leaves at most this part of such a share. */
export const explainedPart = 1 / 2;
