import type { ReducedResult, Reduction, ReductionCurve } from '../bench/reduction.ts';
import type { Plot, PlotAxis, PlotMark } from '../plots/plot.ts';
import type { Dimension } from '../units/dimension.ts';
import { figureInterval, figureNumber, figureQuantity, figureUnit, inWords } from './printed-quantity.ts';

/** Something that happened during the run and may have ended it. */
export interface RunEvent {
  /** `halted` or `stripped`. */
  readonly event: string;
  /** mm3/s. */
  readonly commandedFlow: number;
}

/** The picture of a reduction: readings, fit, band, accepted level, limits, and what ended the run; null without a curve. */
export function reductionPlot(
  { method, results, curve }: Reduction,
  title: string,
  events: readonly RunEvent[],
): Plot | null {
  if (curve === null) return null;
  const happened = curve.x.quantity === 'commandedFlow' ? events : [];
  const limits =
    curve.threshold === null ? [] : results.filter(({ dimension }) => dimension === curve.x.dimension);
  return {
    title: `${title}: ${inWords(method)}`,
    description: describeCurve(curve, limits, happened),
    x: axisOf(curve.x),
    y: axisOf(curve.y),
    marks: [
      ...curveMarks(curve),
      ...happened.map((event) => eventMark(event)),
      ...limits.flatMap((limit) => limitMarks(limit, curve)),
    ],
  };
}

function axisOf({ quantity, dimension }: ReductionCurve['x']): PlotAxis {
  return { quantity: inWords(quantity), unit: figureUnit(dimension) };
}

function curveMarks({ x, y, readings, fit, band, threshold }: ReductionCurve): PlotMark[] {
  const across = (value: number) => figureNumber(value, x.dimension);
  const up = (value: number) => figureNumber(value, y.dimension);
  const point = (place: { x: number; y: number }) => ({ x: across(place.x), y: up(place.y) });
  const marks: PlotMark[] = [];
  if (band.length > 1) {
    const points = band.map((place) => ({ x: across(place.x), low: up(place.low), high: up(place.high) }));
    marks.push({ kind: 'band', label: '95 % band of the fit', points });
  }
  if (fit.length > 1) marks.push({ kind: 'line', label: 'fit', points: fit.map(point) });
  if (threshold !== null) {
    marks.push({ kind: 'level', axis: 'y', at: up(threshold), label: thresholdText({ y, threshold }) });
  }
  marks.push({ kind: 'points', label: 'readings', points: readings.map(point) });
  return marks;
}

function thresholdText({ y, threshold }: { y: ReductionCurve['y']; threshold: number }): string {
  return `accepted ${inWords(y.quantity)} ${figureQuantity(threshold, y.dimension)}`;
}

function eventMark({ event, commandedFlow }: RunEvent): PlotMark {
  return {
    kind: 'level',
    axis: 'x',
    at: commandedFlow,
    label: eventText({ event, commandedFlow }),
    style: event === 'halted' ? 'dashDotted' : 'dotted',
  };
}

function eventText({ event, commandedFlow }: RunEvent): string {
  const words = event === 'stripped' ? 'drive stripped the strand' : event;
  return `${words} at ${figureQuantity(commandedFlow, 'volumeFlow')}`;
}

function limitMarks(result: ReducedResult, { x, y, threshold }: ReductionCurve): PlotMark[] {
  if (threshold === null) return [];
  const at = (value: number) => ({
    x: figureNumber(value, x.dimension),
    y: figureNumber(threshold, y.dimension),
  });
  const label = resultText(result);
  const { low, high } = result.interval;
  if (result.censored !== null) {
    const towards = result.censored === 'above' ? 'right' : 'left';
    return [{ kind: 'bounds', label, towards, points: [at(result.value)], marker: 'diamond' }];
  }
  const place = at(result.value);
  const ends = { low: at(low ?? result.value).x, high: at(high ?? result.value).x };
  return [{ kind: 'intervals', label, along: 'x', points: [{ ...place, ...ends }] }];
}

function resultText({ quantity, dimension, value, interval, censored }: ReducedResult): string {
  const name = inWords(quantity);
  const text = (number: number) => figureQuantity(number, dimension);
  if (censored !== null) return `${name} ${censored === 'above' ? 'at least' : 'below'} ${text(value)}`;
  const { low, high } = interval;
  if (low === null || high === null) return `${name} ${text(value)}`;
  return `${name} ${figureInterval(value, low, high, dimension)}`;
}

/** What the picture shows, for those who cannot see it. */
function describeCurve(
  { x, y, readings, threshold }: ReductionCurve,
  limits: readonly ReducedResult[],
  events: readonly RunEvent[],
): string {
  const range = (values: readonly number[], dimension: Dimension) =>
    `${figureQuantity(Math.min(...values), dimension)} to ${figureQuantity(Math.max(...values), dimension)}`;
  const across = range(
    readings.map((reading) => reading.x),
    x.dimension,
  );
  const up = range(
    readings.map((reading) => reading.y),
    y.dimension,
  );
  const sentences = [
    `${readings.length} readings of ${inWords(y.quantity)} from ${up}, against ${inWords(x.quantity)} from ${across}`,
    ...(threshold === null ? [] : [thresholdText({ y, threshold })]),
    ...limits.map(resultText),
    ...events.map(eventText),
  ];
  return sentences.map((sentence) => `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`).join(' ');
}
