/** mm; where a sound level is stated. */
export const oneMetre = 1000;

/** dB: above it no correction is made, below the lower one a reading cannot be corrected (ISO 3746:2010, from memory). */
export const backgroundRange = { cannot: 3, need: 10 } as const;

/** One reading that could be corrected; levels in dB, distance in mm. */
export interface CorrectedReading {
  readonly distance: number;
  readonly level: number;
  /** By how much the machine is above the room. */
  readonly difference: number;
  readonly atOneMetre: number;
}
