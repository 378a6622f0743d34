import type { Fraction, Range, Seconds } from '../../units/canonical.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import type { FeatureTime, JobEstimate, TimeLimiter } from './job-estimate.ts';

const tenthOfMinute = 6;
const minute = 60;

/** The step in which a time is shown: a tenth of a minute, from two hours on a minute; in s. */
function stepFor(time: Seconds): Seconds {
  return Math.abs(time) < 119.95 * minute ? tenthOfMinute : minute;
}

/** A duration for reading, `13.1 min` or `3 h 20 min`; parts of another are shown in the step of that. */
export function durationText(time: Seconds, step: Seconds = stepFor(time)): string {
  if (step === tenthOfMinute) return `${formatNumber(time / minute, { decimals: 1 })} min`;
  const whole = Math.round(Math.abs(time) / minute);
  const hours = Math.floor(whole / 60);
  return `${time < 0 && whole > 0 ? '-' : ''}${hours === 0 ? '' : `${hours} h `}${whole % 60} min`;
}

/** The ends of a time, in the step in which it is shown itself: `35.1 to 35.9 min`. */
export function intervalText(interval: Range | null, time: Seconds): string {
  if (interval === null) return 'not known';
  const step = stepFor(time);
  const [low, high] = [durationText(interval.low, step), durationText(interval.high, step)];
  return `${step === tenthOfMinute ? low.replace(' min', '') : low} to ${high}`;
}

/** A share for reading, in whole percent. */
export function percent(share: Fraction): string {
  return `${formatNumber(100 * share, { decimals: 0 })} %`;
}

/** The time that one estimate saves against another, as the difference of what is shown of both. */
export function savingText(first: JobEstimate, other: JobEstimate): string {
  const step = Math.max(stepFor(first.time), stepFor(other.time));
  return durationText(rounded(first.time, step) - rounded(other.time, step), step);
}

/** What the time of an estimate is spent under, in texts that add up to what is shown of the whole. */
export function limiterTexts({
  limiters,
  time,
}: JobEstimate): ReadonlyMap<TimeLimiter, { time: string; share: string }> {
  const times = limiters.map((held) => held.time);
  const step = stepFor(time);
  const [shown, shares] = [
    apportioned(times, step),
    apportioned(
      times.map((held) => held / time),
      0.01,
    ),
  ];
  return new Map(
    limiters.map(({ limiter }, index) => [
      limiter,
      { time: durationText(shown[index] ?? 0, step), share: percent(shares[index] ?? 0) },
    ]),
  );
}

/** Times of the features of an estimate and of what lies between its layers, in texts that add up in the same way. */
export function featureTexts({ features, betweenLayers, time }: JobEstimate): {
  readonly features: ReadonlyMap<FeatureTime['feature'], string>;
  readonly betweenLayers: string;
} {
  const step = stepFor(time);
  const [between = 0, ...shown] = apportioned([betweenLayers, ...features.map((path) => path.time)], step);
  return {
    features: new Map(features.map(({ feature }, index) => [feature, durationText(shown[index] ?? 0, step)])),
    betweenLayers: durationText(between, step),
  };
}

/**
 * Parts rounded to a step so that they add up to their rounded sum: all are rounded down, and the steps that then lack
 * go to those that lost most. Source: method of the largest remainder (Hamilton's method of apportionment).
 */
export function apportioned(parts: readonly number[], step: number): number[] {
  const exact = parts.map((part) => part / step);
  const floors = exact.map((part) => Math.floor(part + 1e-9));
  const lacking = Math.round(total(exact)) - total(floors);
  const byLoss = exact
    .map((part, index) => ({ index, loss: part - (floors[index] ?? 0) }))
    .sort((a, b) => b.loss - a.loss || a.index - b.index)
    .slice(0, Math.max(0, lacking));
  const raised = new Set(byLoss.map(({ index }) => index));
  return floors.map((floor, index) => (floor + (raised.has(index) ? 1 : 0)) * step);
}

function rounded(value: number, step: number): number {
  return Math.round(value / step) * step;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
