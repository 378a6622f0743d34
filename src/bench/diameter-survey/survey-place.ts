/** One place along the filament; all in mm. */
export interface SurveyPlace {
  readonly position: number;
  readonly diameter: number;
  /** Difference between the two axes. */
  readonly ovality: number;
  /** Relative deviation of the elliptical cross section from the nominal circle. */
  readonly areaError: number;
}

/** In mm. */
export interface Gauge {
  readonly resolution: number;
  readonly accuracy: number;
}
