import { doubtfulInSeries } from '../doubt/doubtful-in-series.ts';
import { type DoubtfulReading, plainDoubts } from '../doubt/doubtful-reading.ts';
import { usualMassResolution } from '../facts/instrument-facts.ts';
import type { Observations } from '../sheet/observations.ts';
import type { DryingCurveRun } from './drying-curve-facts.ts';

/** Scatter of a weighing in steps of the scale, and what it counts in degrees of freedom (common practice, no source). */
const usual = { steps: 3, freedom: 6 };
/** A spool is put down and taken up again to within that share of its mass (common practice, no source). */
const leastShare = 0.001;
/** How many times the fall beside it the first or the last weighing may fall. */
const endsWithin = 10;

/** The weighings of a drying that no falling mass explains: above one before, or below one after, by more than a scale is off. */
export function doubtfulWeighings(
  { columns, rows }: Observations,
  { massResolution = usualMassResolution }: DryingCurveRun,
): DoubtfulReading[] {
  const { elapsedTime = [], mass = [] } = columns;
  const readings = rows.map((row, index) => ({
    row,
    x: elapsedTime[index] ?? Number.NaN,
    y: mass[index] ?? Number.NaN,
  }));
  const found = doubtfulInSeries(readings, {
    course: 'falling',
    scatterAt: () => [{ probability: 1, deviation: usual.steps * massResolution, freedom: usual.freedom }],
    resolutionAt: () => massResolution,
    least: leastShare * Math.min(...mass),
    endsWithin: { first: endsWithin, last: endsWithin },
  });
  return plainDoubts('mass', found);
}
