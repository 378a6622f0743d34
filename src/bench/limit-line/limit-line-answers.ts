import { failure, type Problem, type Result, refusal, success } from '../../result.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import type { LimitLine } from './limit-line.ts';

/** A limit read off a line, with the pointwise 95 % band; mm3/s. */
export interface LimitAnswer {
  /** Nozzle temperature, °C. */
  readonly temperature: number;
  readonly limit: number;
  readonly low: number;
  readonly high: number;
  /** Whether the temperature lies outside of those tested, where the line is a guess. */
  readonly extrapolated: boolean;
}

/** What to do about temperatures outside of those tested. */
export interface Extrapolation {
  /** Answer all the same, and mark the answer. Without it there is none. */
  readonly extrapolate?: boolean;
}

/** The limit at a nozzle temperature in °C. Problem: the temperature lies outside of those tested. */
export function limitAt(
  line: LimitLine,
  temperature: number,
  { extrapolate = false }: Extrapolation = {},
): Result<LimitAnswer, Problem<'outsideTested'>> {
  const extrapolated = !(temperature >= line.tested.low && temperature <= line.tested.high);
  if (extrapolated && !extrapolate) return outsideTested(line, temperature);
  const limit = line.centre.limit + line.slope * (temperature - line.centre.temperature);
  const half = line.coverageFactor * uncertaintyAt(line, temperature);
  return success({ temperature, limit, low: limit - half, high: limit + half, extrapolated });
}

/** Which of the line and its band a temperature is read off. */
export interface TemperatureSide {
  /** `safe` asks that the lower end of the 95 % band carries the flow, `centre` that the line does. */
  readonly side: 'safe' | 'centre';
}

/** A nozzle temperature that carries a flow. */
export interface TemperatureAnswer {
  /** °C, one of those tested or between them. */
  readonly temperature: number;
  /** The lowest temperature tested carries the flow already; a lower one might. */
  readonly isLowestTested: boolean;
}

/** No tested temperature delivers the flow. */
export interface BeyondTested extends Problem<'beyondTested'> {
  /** The highest flow that a temperature inside of the tested range carries on that side, mm3/s. */
  readonly highestFlow: number;
}

/**
 * The lowest nozzle temperature inside of the tested range that carries a flow in mm3/s: the inverse of the line, by
 * default of the lower end of its band. Never extrapolates.
 */
export function temperatureForFlow(
  line: LimitLine,
  flow: number,
  { side }: TemperatureSide = { side: 'safe' },
): Result<TemperatureAnswer, BeyondTested> {
  const factor = side === 'safe' ? line.coverageFactor : 0;
  const carried = (temperature: number) =>
    line.centre.limit +
    line.slope * (temperature - line.centre.temperature) -
    factor * uncertaintyAt(line, temperature);
  const { low, high } = line.tested;
  if (carried(low) >= flow) return success({ temperature: low, isLowestTested: true });
  const crossings = crossingsOf(line, flow, factor).filter(
    (temperature) => temperature > low && temperature < high && isReached(carried(temperature), flow),
  );
  const held = [...crossings, high].find((temperature) => isReached(carried(temperature), flow));
  return held === undefined
    ? failure(beyondTested(flow, Math.max(carried(low), carried(high), carried(summit(line, factor)))))
    : success({ temperature: held, isLowestTested: false });
}

function outsideTested({ tested }: LimitLine, temperature: number) {
  const [asked, low, high] = [temperature, tested.low, tested.high].map((each) => text(each, 'temperature'));
  return refusal(
    'outsideTested',
    `No limit at ${asked}: the ladders ran from ${low} to ${high}`,
    `Run a ladder at ${asked}.`,
  );
}

function beyondTested(flow: number, highestFlow: number): BeyondTested {
  const [asked, most] = [flow, highestFlow].map((each) => text(each, 'volumeFlow'));
  return {
    code: 'beyondTested',
    message: `No tested temperature delivers ${asked}: ${most} at most`,
    help: 'Ask for less, or run a ladder at a higher temperature.',
    highestFlow,
  };
}

/** Programs may ask for what is no number. */
function text(value: number, dimension: 'temperature' | 'volumeFlow'): string {
  return Number.isFinite(value) ? formatQuantity(value, dimension, { significantDigits: 4 }) : String(value);
}

/** The uncertainty of the line about its centre, where slope and limit are independent. */
function uncertaintyAt({ centre, slopeUncertainty }: LimitLine, temperature: number): number {
  return Math.hypot(centre.uncertainty, slopeUncertainty * (temperature - centre.temperature));
}

/** A root meets the flow but for rounding. */
function isReached(carried: number, flow: number): boolean {
  return carried >= flow - 1e-9 * Math.abs(flow);
}

/** Where line - factor·uncertainty may equal the flow, rising: the roots of the squared equation, which is quadratic. */
function crossingsOf({ centre, slope, slopeUncertainty }: LimitLine, flow: number, factor: number): number[] {
  const above = centre.limit - flow;
  if (factor === 0) return [centre.temperature - above / slope];
  const square = slope ** 2 - (factor * slopeUncertainty) ** 2;
  const half = slope * above;
  const constant = above ** 2 - (factor * centre.uncertainty) ** 2;
  const root = Math.sqrt(half ** 2 - square * constant);
  return [(-half - root) / square, (-half + root) / square]
    .map((offset) => centre.temperature + offset)
    .sort((one, other) => one - other);
}

/** Where the lower end of the band is highest: inside of the range, or at one of its ends. */
function summit({ centre, slope, slopeUncertainty, tested }: LimitLine, factor: number): number {
  const steep = factor * slopeUncertainty;
  if (steep <= Math.abs(slope)) return slope > 0 ? tested.high : tested.low;
  const offset = (slope * centre.uncertainty) / (slopeUncertainty * Math.sqrt(steep ** 2 - slope ** 2));
  return Math.min(Math.max(centre.temperature + offset, tested.low), tested.high);
}
