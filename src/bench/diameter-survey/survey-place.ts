import { groupedBy } from '../../registry/grouped-by.ts';
import type { Observations } from '../sheet/observations.ts';

/** One place along the filament; all in mm. */
export interface SurveyPlace {
  readonly position: number;
  readonly diameter: number;
  /** The first axis less the second; the mean of the readings of the place. */
  readonly difference: number;
  /** The differences that were read there, more than one where the place was read again. */
  readonly differences: readonly number[];
  /** Relative deviation of the elliptical cross section from the nominal circle. */
  readonly areaError: number;
}

/** In mm. */
export interface Gauge {
  readonly resolution: number;
  readonly accuracy: number;
}

/** Places in the order in which they lie along the filament; rows of the same position are readings of one place. */
export function surveyPlaces({ columns }: Observations, nominal: number): SurveyPlace[] {
  const { position = [], firstDiameter = [], secondDiameter = [] } = columns;
  const readings = position.map((at, index) => ({
    at,
    first: firstDiameter[index] ?? Number.NaN,
    second: secondDiameter[index] ?? Number.NaN,
  }));
  return [...groupedBy(readings, ({ at }) => String(at)).values()]
    .map((here) => {
      const mean = (of: (reading: (typeof here)[number]) => number) =>
        here.reduce((sum, reading) => sum + of(reading), 0) / here.length;
      const [first, second] = [mean((reading) => reading.first), mean((reading) => reading.second)];
      return {
        position: here[0]?.at ?? Number.NaN,
        diameter: (first + second) / 2,
        difference: first - second,
        differences: here.map((reading) => reading.first - reading.second),
        areaError: (first * second) / nominal ** 2 - 1,
      };
    })
    .sort((one, other) => one.position - other.position);
}
