import { groupedBy } from '../../registry/grouped-by.ts';
import { nonDecreasingFit } from '../../statistics/monotone-regression.ts';
import type { CubicMillimetresPerSecond, Grams } from '../../units/canonical.ts';
import type { LadderReading } from './ladder-readings.ts';

/** A reading that does not lie where all others of its ladder say. */
export interface OffTrend {
  readonly reading: LadderReading;
  /** What the others let expect at that flow and fed length. */
  readonly expected: Grams;
  /** Difference between the logarithms of what was weighed and what was expected. */
  readonly deviation: number;
  /** Standard deviation of the logarithms of the others about their trend. */
  readonly spread: number;
}

/** Flow meters, filaments and scales of benches scatter that much at least, as a share (common practice, no source). */
const leastSpread = 0.003;
/** Only readings with the largest residuals can be the one that is off: each pulls its neighbours along. */
const candidates = 4;
const fewestSteps = 4;

/**
 * The reading that disturbs the trend of its ladder most: mass per fed length never rises with the flow (Barlow et
 * al., Statistical Inference under Order Restrictions, 1972, section 1.2), and repeats agree. Null for ladders of less
 * than four different flows, where there is no trend.
 */
export function mostOffTrend(readings: readonly LadderReading[], resolution: Grams): OffTrend | null {
  const whole = trendOf(readings);
  if (whole.size < fewestSteps) return null;
  const residual = (reading: LadderReading) => Math.abs(residualIn(whole, reading));
  const suspects = readings
    .toSorted((a, b) => residual(b) - residual(a))
    .slice(0, candidates)
    .map((reading) =>
      judge(
        reading,
        readings.filter((other) => other !== reading),
        resolution,
      ),
    );
  const calmest = Math.min(...suspects.map(({ misfit }) => misfit));
  // Of two repeats each can be the one that is off: it is the one that is further from the steps beside it.
  const tied = suspects.filter(({ misfit, spread }) => misfit <= calmest + 9 * spread ** 2);
  return tied.toSorted((a, b) => b.loneliness - a.loneliness)[0] ?? null;
}

interface Suspect extends OffTrend {
  /** Sum of the squared residuals that is left without the reading. */
  readonly misfit: number;
  /** Distance from the nearest step on either side. */
  readonly loneliness: number;
}

function judge(reading: LadderReading, others: readonly LadderReading[], resolution: Grams): Suspect {
  const trend = trendOf(others);
  const misfit = others.reduce((sum, other) => sum + residualIn(trend, other) ** 2, 0);
  const degrees = Math.max(1, others.length - trend.size);
  const spread = Math.hypot(Math.sqrt(misfit / degrees), leastSpread, resolution / reading.mass);
  const { low, high } = corridorAt(trend, reading.flow);
  const value = logOf(reading);
  const level = Math.min(Math.max(value, low), high);
  return {
    reading,
    expected: Math.exp(level) * reading.feedLength,
    deviation: value - level,
    spread,
    misfit,
    loneliness: distanceToNeighbours(value, trend, reading.flow),
  };
}

/** Flow of each step, ascending, with the logarithm of the mass per fed length that the trend has there. */
type Trend = ReadonlyMap<CubicMillimetresPerSecond, number>;

function trendOf(readings: readonly LadderReading[]): Trend {
  const steps = [...groupedBy(readings, ({ flow }) => String(flow)).values()]
    .map((group) => ({
      flow: group[0]?.flow ?? Number.NaN,
      mean: group.reduce((sum, reading) => sum + logOf(reading), 0) / group.length,
      count: group.length,
    }))
    .sort((a, b) => a.flow - b.flow);
  const losses = nonDecreasingFit(
    steps.map(({ mean }) => -mean),
    steps.map(({ count }) => count),
  );
  return new Map(steps.map(({ flow }, index) => [flow, -(losses[index] ?? Number.NaN)]));
}

function logOf({ mass, feedLength }: LadderReading): number {
  return Math.log(mass / feedLength);
}

function residualIn(trend: Trend, reading: LadderReading): number {
  return logOf(reading) - (trend.get(reading.flow) ?? Number.NaN);
}

/** Between which levels a flow must lie: its own step, or the steps on either side of it. */
function corridorAt(trend: Trend, flow: number): { readonly low: number; readonly high: number } {
  const own = trend.get(flow);
  if (own !== undefined) return { low: own, high: own };
  const { before, after } = besides(trend, flow);
  return { low: after ?? Number.NEGATIVE_INFINITY, high: before ?? Number.POSITIVE_INFINITY };
}

function besides(trend: Trend, flow: number): { readonly before?: number; readonly after?: number } {
  const before = [...trend].findLast((step) => step[0] < flow)?.[1];
  const after = [...trend].find((step) => step[0] > flow)?.[1];
  return { ...(before !== undefined && { before }), ...(after !== undefined && { after }) };
}

function distanceToNeighbours(value: number, trend: Trend, flow: number): number {
  return Math.min(...Object.values(besides(trend, flow)).map((level) => Math.abs(value - level)));
}
