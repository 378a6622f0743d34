import { median } from '../../statistics/middle.ts';
import { doubtfulInSample } from '../doubt/doubtful-in-sample.ts';
import { type DoubtfulReading, plainDoubts, type Unexpected } from '../doubt/doubtful-reading.ts';
import { usualLengthResolution } from '../facts/instrument-facts.ts';
import type { Observations } from '../sheet/observations.ts';
import type { DiameterSurveyRun } from './diameter-survey-facts.ts';

/** Scatter of readings along a filament, mm, and what it counts in degrees of freedom (common practice, no source). */
const usual = { scatter: 0.012, freedom: 3 };
/** mm; filaments are as thick and thin as that here and there. */
const least = 0.03;

/** Scatter of the difference of both axes at one place, mm (common practice, no source). */
const usualDifference = 0.008;

/**
 * The readings of either axis that lie farther from all others of that axis than these scatter, and those that differ from the
 * other axis at their place as no other place does: a strand that is thick here is thick both ways.
 */
export function doubtfulDiameters(
  { columns, rows }: Observations,
  { lengthResolution: resolution = usualLengthResolution }: DiameterSurveyRun,
): DoubtfulReading[] {
  const { firstDiameter = [], secondDiameter = [] } = columns;
  const readings = (values: readonly number[]) =>
    rows.map((row, index) => ({ row, x: 0, y: values[index] ?? Number.NaN }));
  const noise = { usualScatter: usual.scatter, freedom: usual.freedom, resolution, least };
  const single = Object.entries({ firstDiameter, secondDiameter }).flatMap(([column, values]) =>
    plainDoubts(column, doubtfulInSample(readings(values), noise)),
  );
  const apart = doubtfulInSample(
    readings(firstDiameter.map((first, at) => first - (secondDiameter[at] ?? first))),
    { ...noise, usualScatter: usualDifference, resolution: resolution * Math.SQRT2 },
  );
  const known = new Set(single.map(({ row }) => row));
  return [...single, ...apart.filter(({ reading }) => !known.has(reading.row)).map(ofOneAxis)];

  function ofOneAxis({ reading: { row }, expected, spread }: Unexpected): DoubtfulReading {
    const at = rows.indexOf(row);
    const [first = Number.NaN, second = Number.NaN] = [firstDiameter[at], secondDiameter[at]];
    const off = (values: readonly number[]) => Math.abs((values[at] ?? 0) - (median(values) ?? 0));
    const isFirst = off(firstDiameter) >= off(secondDiameter);
    return {
      ...{ row, spread, isRelative: false, rival: null },
      column: isFirst ? 'firstDiameter' : 'secondDiameter',
      found: isFirst ? first : second,
      expected: isFirst ? second + expected : first - expected,
    };
  }
}
