import { tickStep, ticks } from 'd3-array';
import type { Plot, PlotMark } from './plot.ts';

/** One axis of a plot: where its numbers stand, and which of them are written. */
export interface PlotScale {
  readonly low: number;
  readonly high: number;
  /** The share of the way from `low` to `high` at which a number stands. */
  readonly share: (value: number) => number;
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
}

/** The least width of an axis, relative to what it shows: below that rounding would draw the picture. */
const leastSpread = 1e-6;

/** The share of an axis that is left free at either end. */
const margin = 0.04;

/** The scale of an axis that shows all marks, with about so many ticks at round numbers. */
export function plotScale(plot: Plot, axis: 'x' | 'y', tickCount: number): PlotScale {
  const [low, high] = plot[axis].range ?? padded(plot.marks.flatMap((mark) => valuesOf(mark, axis)));
  const decimals = Math.max(0, -Math.floor(Math.log10(tickStep(low, high, tickCount)) + 1e-9));
  return {
    low,
    high,
    share: (value) => (value - low) / (high - low),
    ticks: ticks(low, high, tickCount).map((value) => ({ value, text: (value + 0).toFixed(decimals) })),
  };
}

/** What a mark needs of an axis. */
function valuesOf(mark: PlotMark, axis: 'x' | 'y'): number[] {
  switch (mark.kind) {
    case 'line':
    case 'points':
    case 'bounds':
      return mark.points.map((point) => point[axis]);
    case 'band':
      return mark.points.flatMap(({ x, low, high }) => (axis === 'x' ? [x] : [low, high]));
    case 'intervals':
      return mark.points.flatMap((point) =>
        axis === mark.along ? [point[axis], point.low, point.high] : [point[axis]],
      );
    case 'level':
      return mark.axis === axis ? [mark.at] : [];
    case 'note':
      return [mark.at[axis]];
    default:
      return mark satisfies never;
  }
}

function padded(values: readonly number[]): readonly [number, number] {
  const finite = values.filter(Number.isFinite);
  if (finite.length === 0) return [0, 1];
  const low = finite.reduce((least, value) => Math.min(least, value));
  const high = finite.reduce((most, value) => Math.max(most, value));
  const spread = Math.max(high - low, leastSpread * Math.max(Math.abs(low), Math.abs(high), 1));
  return [low - margin * spread, high + margin * spread];
}
