/** What a drying is judged by; masses in g, times in s. */
export interface DryingData {
  readonly times: readonly number[];
  readonly masses: readonly number[];
  readonly resolution: number;
  readonly residualMoisture: number;
  readonly reelMass: number;
}
