import { describe } from '../../statistics/describe.ts';
import type { Observations } from '../sheet/observations.ts';
import type { SetScale } from './set-scale.ts';

/** A set value with what the reference showed once it had settled, on one scale; times in s. */
export interface SetPoint {
  readonly set: number;
  /** The later half of the settled readings. */
  readonly readings: readonly number[];
  /** Last time at which it had not settled, and first at which it had; null where no times were read. */
  readonly settled: { readonly after: number; readonly by: number } | null;
}

/** Standard deviations of a reading within which it may be on either side of the tolerance. */
const unsure = 1.5;

/** How far settled readings may be from their mean, and the step of the display. */
interface Settling {
  readonly within: number;
  readonly resolution: number;
}

interface Reading {
  readonly time: number | null;
  readonly value: number;
}

/** The readings by set value, ascending, without those before it had settled. */
export function setPointsOf(
  { columns, rows }: Observations,
  scale: SetScale,
  settling: Settling,
): SetPoint[] {
  const { [scale.set]: setTo = [], [scale.reference]: shown = [], elapsedTime } = columns;
  const sets = [...new Set(setTo)].sort((one, other) => one - other);
  return sets.map((set) => {
    const readings = rows.flatMap((_, index): Reading[] =>
      setTo[index] === set ? [{ time: elapsedTime?.[index] ?? null, value: shown[index] ?? Number.NaN }] : [],
    );
    return settledPart(
      set,
      readings.toSorted((one, other) => (one.time ?? 0) - (other.time ?? 0)),
      settling,
    );
  });
}

/** From the first reading on from which all stay near the mean of the last third; all where no times were read. */
function settledPart(set: number, readings: readonly Reading[], { within, resolution }: Settling): SetPoint {
  const values = readings.map(({ value }) => value);
  if (readings.some(({ time }) => time === null)) return { set, readings: values, settled: null };
  const last = values.slice(-Math.max(3, Math.ceil(values.length / 3)));
  const { mean, standardDeviation } = describe(last);
  const lastBeyond = (tolerance: number) =>
    values.findLastIndex((value) => Math.abs(value - mean) > tolerance);
  const first = lastBeyond(within) + 1;
  // A reading near the tolerance may be on either side of it by its scatter, or by the step of the display, alone.
  const doubt = Math.min(unsure * standardDeviation + resolution / 2, within / 2);
  const timeAt = (index: number) => readings[index]?.time ?? null;
  const settled = values.slice(first);
  // The first of them still creep: the later half counts, and three at least.
  const kept = settled.slice(Math.min(Math.floor(settled.length / 2), Math.max(0, settled.length - 3)));
  return {
    set,
    readings: kept,
    settled: {
      after: timeAt(lastBeyond(within + doubt)) ?? 0,
      by: timeAt(lastBeyond(within - doubt) + 1) ?? timeAt(readings.length - 1) ?? 0,
    },
  };
}
