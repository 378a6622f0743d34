import { doubtfulInSample } from '../doubt/doubtful-in-sample.ts';
import { type DoubtfulReading, plainDoubts } from '../doubt/doubtful-reading.ts';
import { usualLengthResolution } from '../facts/instrument-facts.ts';
import type { Observations } from '../sheet/observations.ts';
import type { DiameterSurveyRun } from './diameter-survey-facts.ts';

/** Scatter of readings along a filament, mm, and what it counts in degrees of freedom (common practice, no source). */
const usual = { scatter: 0.012, freedom: 3 };
/** mm; filaments are as thick and thin as that here and there. */
const least = 0.03;

/** The readings of either axis that lie farther from all others of that axis than these scatter. */
export function doubtfulDiameters(
  { columns, rows }: Observations,
  { lengthResolution = usualLengthResolution }: DiameterSurveyRun,
): DoubtfulReading[] {
  return ['firstDiameter', 'secondDiameter'].flatMap((column) => {
    const readings = rows.map((row, index) => ({ row, x: 0, y: columns[column]?.[index] ?? Number.NaN }));
    const noise = {
      usualScatter: usual.scatter,
      freedom: usual.freedom,
      resolution: lengthResolution,
      least,
    };
    return plainDoubts(column, doubtfulInSample(readings, noise));
  });
}
