import { methodOf } from '../../bench/methods.ts';
import type { ReducedResult, Reduction, ReductionCurve } from '../../bench/reduction.ts';
import type { EventMark, RunEvent } from '../../bench/run-event.ts';
import type { Plot, PlotMark, PlotPoint } from '../../plots/plot.ts';
import { wordsOf } from '../../text/words.ts';
import {
  type FigureScale,
  figureInterval,
  figureNumber,
  figureQuantity,
  figureScale,
  figureUnit,
} from './printed-quantity.ts';

/** A curve with the units in which the figure shows its axes. */
interface Figure {
  readonly curve: ReductionCurve;
  readonly across: FigureScale;
  readonly up: FigureScale;
}

/** The picture of a reduction: readings, fit, band, accepted level, limits, and what ended the run; null without a curve. */
export function reductionPlot(
  { method, results, curve }: Reduction,
  title: string,
  events: readonly RunEvent[],
): Plot | null {
  if (curve === null) return null;
  const figure = {
    curve,
    across: figureScale(curve.x.dimension, Math.max(...curve.readings.map(({ x }) => x))),
    up: figureScale(curve.y.dimension, Math.max(...curve.readings.map(({ y }) => y))),
  };
  const happened = methodOf(method).eventMarks?.(events) ?? [];
  // Of results at several conditions the curve is that of the first.
  const limits = results.filter(
    ({ dimension, at }) =>
      curve.threshold !== null &&
      dimension === curve.x.dimension &&
      at?.acceleration === results[0]?.at?.acceleration,
  );
  return {
    title: `${title}: ${wordsOf(method)}`,
    description: describeFigure(figure, limits, happened),
    x: { quantity: wordsOf(curve.x.quantity), unit: figureUnit(figure.across) },
    y: { quantity: wordsOf(curve.y.quantity), unit: figureUnit(figure.up) },
    marks: [
      ...curveMarks(figure),
      ...happened.map((event) => eventMark(event, figure)),
      ...limits.flatMap((limit) => limitMarks(limit, figure)),
    ],
  };
}

function curveMarks(figure: Figure): PlotMark[] {
  const { readings, fit, band, threshold } = figure.curve;
  const point = (place: PlotPoint) => placeOf(place, figure);
  const up = (value: number) => figureNumber(value, figure.up);
  const marks: PlotMark[] = [];
  if (band.length > 1) {
    const across = (value: number) => figureNumber(value, figure.across);
    const points = band.map(({ x, low, high }) => ({ x: across(x), low: up(low), high: up(high) }));
    marks.push({ kind: 'band', label: '95 % band of the fit', points });
  }
  if (fit.length > 1) marks.push({ kind: 'line', label: 'fit', points: fit.map(point) });
  if (threshold !== null) {
    marks.push({ kind: 'level', axis: 'y', at: up(threshold), label: thresholdText(threshold, figure) });
  }
  marks.push({ kind: 'points', label: 'readings', points: readings.map(point) });
  return marks;
}

function placeOf({ x, y }: PlotPoint, { across, up }: Figure): PlotPoint {
  return { x: figureNumber(x, across), y: figureNumber(y, up) };
}

function thresholdText(threshold: number, { curve, up }: Figure): string {
  const heights = curve.readings.map(({ y }) => y);
  const span = Math.max(...heights) - Math.min(...heights);
  return `accepted ${wordsOf(curve.y.quantity)} ${figureQuantity(threshold, up, span)}`;
}

function eventMark(event: EventMark, { across }: Figure): PlotMark {
  const label = eventText(event, across);
  return { kind: 'level', axis: 'x', at: figureNumber(event.at, across), label, style: event.style };
}

function eventText({ words, at }: EventMark, across: FigureScale): string {
  return `${words} at ${figureQuantity(at, across)}`;
}

function limitMarks(result: ReducedResult, figure: Figure): PlotMark[] {
  const { threshold } = figure.curve;
  if (threshold === null) return [];
  const label = resultText(result, figure.across);
  const place = placeOf({ x: result.value, y: threshold }, figure);
  if (result.censored !== null) {
    const towards = result.censored === 'above' ? 'right' : 'left';
    return [{ kind: 'bounds', label, towards, points: [place], marker: 'diamond' }];
  }
  const [low, high] = [result.interval.low, result.interval.high].map((end) =>
    figureNumber(end ?? result.value, figure.across),
  );
  const ends = { low: low ?? place.x, high: high ?? place.x };
  return [{ kind: 'intervals', label, along: 'x', points: [{ ...place, ...ends }] }];
}

function resultText({ quantity, value, interval, censored, at }: ReducedResult, across: FigureScale): string {
  const condition =
    at === undefined ? '' : ` at ${figureQuantity(at.acceleration, figureScale('acceleration'))}`;
  const name = `${wordsOf(quantity)}${condition}`;
  const text = (number: number) => figureQuantity(number, across);
  if (censored !== null) return `${name} ${censored === 'above' ? 'at least' : 'below'} ${text(value)}`;
  const { low, high } = interval;
  if (low === null || high === null) return `${name} ${text(value)}`;
  return `${name} ${figureInterval(value, low, high, across)}`;
}

/** What the picture shows, for those who cannot see it. */
function describeFigure(
  figure: Figure,
  limits: readonly ReducedResult[],
  events: readonly EventMark[],
): string {
  const { x, y, readings, threshold } = figure.curve;
  const range = (values: readonly number[], scale: FigureScale) =>
    `${figureQuantity(Math.min(...values), scale)} to ${figureQuantity(Math.max(...values), scale)}`;
  const across = readings.map((reading) => reading.x);
  const up = readings.map((reading) => reading.y);
  const sentences = [
    `${readings.length} readings of ${wordsOf(y.quantity)} from ${range(up, figure.up)}, against ${wordsOf(x.quantity)} from ${range(across, figure.across)}`,
    ...(threshold === null ? [] : [thresholdText(threshold, figure)]),
    ...limits.map((limit) => resultText(limit, figure.across)),
    ...events.map((event) => eventText(event, figure.across)),
  ];
  return sentences.map((sentence) => `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`).join(' ');
}
