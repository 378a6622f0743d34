import { fitLimitLine, type LimitLine } from '../../../bench/limit-line/limit-line.ts';
import { limitAt } from '../../../bench/limit-line/limit-line-answers.ts';
import { type Basis, weakerBasis } from '../../../registry/statement.ts';
import { type Problem, type Result, refusal, success } from '../../../result.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius, Fraction, Range } from '../../../units/canonical.ts';
import { formatQuantity } from '../../../units/format-quantity.ts';
import { type Calculation, resultTerm, sourcedTerm, type Term } from '../calculation.ts';
import type { MeltLimit } from './melt-limit.ts';
import type { UsableLimit } from './usable-limit.ts';

/** The most melt at one nozzle temperature: a tested limit, or what the line through the tested ones leaves there. */
export interface MeltAt extends Pick<UsableLimit, 'cap' | 'isWeak'> {
  readonly nozzleTemperature: DegreesCelsius;
  readonly value: CubicMillimetresPerSecond;
  /** 95 % coverage interval of a tested limit, or the band of the line; null where none is known. */
  readonly interval: Range | null;
  readonly basis: Basis;
  readonly acceptedDeficit: Fraction | null;
  /** The flow as a term of a bound. */
  readonly term: Term;
  /** How it was read off a line; null for a tested limit. */
  readonly line: Calculation | null;
  /** What it rests on: one tested limit, or those that the line goes through. */
  readonly limits: readonly MeltLimit[];
}

/** Why no limit is known at a nozzle temperature. */
export type NoMeltAt = Problem<'outsideTested' | 'noLine'>;

/**
 * The melt limit at a nozzle temperature in °C: as tested there; between tested temperatures the lower end of the 95 %
 * band of the line through their limits. Problems: a temperature outside of those tested, or limits without intervals,
 * between which no line is drawn. `tested` are the limits of a pairing, the coolest first.
 */
export function meltAt(tested: readonly MeltLimit[], temperature: DegreesCelsius): Result<MeltAt, NoMeltAt> {
  const exact = tested.find(({ nozzleTemperature }) => nozzleTemperature === temperature);
  if (exact !== undefined) return success(testedAt(exact));
  const [coolest, hottest] = [tested[0], tested.at(-1)];
  const inside =
    coolest !== undefined &&
    hottest !== undefined &&
    temperature > coolest.nozzleTemperature &&
    temperature < hottest.nozzleTemperature;
  return inside ? betweenTested(tested, temperature) : outside(tested, temperature);
}

function testedAt(limit: MeltLimit): MeltAt {
  const { nozzleTemperature, value, ground, basis, acceptedDeficit, cap, isWeak } = limit;
  return {
    nozzleTemperature,
    value,
    interval: ground.interval,
    basis,
    acceptedDeficit,
    cap,
    isWeak,
    term: sourcedTerm('Q', ground, value),
    line: null,
    limits: [limit],
  };
}

function betweenTested(
  tested: readonly MeltLimit[],
  temperature: DegreesCelsius,
): Result<MeltAt, Problem<'noLine'>> {
  const withInterval = tested.filter(({ ground }) => ground.interval !== null);
  const line = fitLimitLine(
    withInterval.map(({ value, nozzleTemperature, ground: { interval } }) => ({
      temperature: nozzleTemperature,
      limit: value,
      low: interval?.low ?? Number.NaN,
      high: interval?.high ?? Number.NaN,
    })),
  );
  const answer = line.ok ? limitAt(line.value, temperature) : null;
  const [first] = withInterval;
  if (!line.ok || answer === null || !answer.ok || first === undefined || !(answer.value.low > 0)) {
    return refusal(
      'noLine',
      `No limit is known at ${degrees(temperature)}, and none can be drawn between those that are: ${temperatures(tested)}`,
      `Take one of these, or run a ladder at ${degrees(temperature)}.`,
    );
  }
  const { low, high } = answer.value;
  const calculation = readOff(line.value, withInterval, temperature, low);
  return success({
    nozzleTemperature: temperature,
    value: low,
    interval: { low, high },
    basis: withInterval.map(({ basis }) => basis).reduce(weakerBasis),
    acceptedDeficit: largestDeficit(withInterval),
    cap: first.cap,
    isWeak: withInterval.some(({ isWeak }) => isWeak),
    term: resultTerm(calculation),
    line: calculation,
    limits: withInterval,
  });
}

/** The lower end of the band of a line at a temperature, with the numbers that the fit gave. */
function readOff(
  { centre, slope, slopeUncertainty, coverageFactor }: LimitLine,
  limits: readonly MeltLimit[],
  temperature: DegreesCelsius,
  exact: CubicMillimetresPerSecond,
): Calculation {
  const fitted = (symbol: string, what: string, value: number, dimension: Term['dimension']): Term => {
    return { symbol, what, value, dimension, ground: null, origin: 'fitted' };
  };
  return {
    symbol: 'Q',
    what: `melt flow limit at ${degrees(temperature)}, the lower end of the 95 % band of the line`,
    formula: 'Q0 + b * (T - T0) - k * sqrt(u0^2 + (ub * (T - T0))^2)',
    terms: [
      fitted('Q0', 'limit at the centre of the line', centre.limit, 'volumeFlow'),
      fitted('b', 'slope of the line, mm3/s per K', slope, null),
      { ...fitted('T', 'nozzle temperature', temperature, 'temperature'), origin: 'asked' },
      fitted('T0', 'centre of the line', centre.temperature, 'temperature'),
      fitted('k', 'coverage factor of the band', coverageFactor, null),
      fitted('u0', 'standard uncertainty at the centre', centre.uncertainty, 'volumeFlow'),
      fitted('ub', 'standard uncertainty of the slope, mm3/s per K', slopeUncertainty, null),
    ],
    fittedTo: limits.map(({ ground }) => ground),
    exact,
    dimension: 'volumeFlow',
    rounded: null,
  };
}

function largestDeficit(limits: readonly MeltLimit[]): Fraction | null {
  const known = limits.flatMap(({ acceptedDeficit }) => acceptedDeficit ?? []);
  return known.length === 0 ? null : Math.max(...known);
}

function outside(tested: readonly MeltLimit[], temperature: DegreesCelsius) {
  return refusal(
    'outsideTested',
    `${degrees(temperature)} lies outside of what was tested: limits are known at ${temperatures(tested)}`,
    `Take a temperature inside, or run a ladder at ${degrees(temperature)}.`,
  );
}

function temperatures(limits: readonly MeltLimit[]): string {
  return limits.map(({ nozzleTemperature }) => degrees(nozzleTemperature)).join(', ');
}

function degrees(value: DegreesCelsius): string {
  return formatQuantity(value, 'temperature', { significantDigits: 6 });
}
