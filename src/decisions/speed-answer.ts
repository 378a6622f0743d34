import type { Fraction, MillimetresPerSecond, Seconds } from '../units/canonical.ts';
import { formatNumber } from '../units/format-quantity.ts';
import { pairingName } from './comparison.ts';
import type { JobEstimate } from './job-estimate.ts';

/**
 * "Do I need the speed?" in one sentence: the fastest pairing, what it saves against the first, what holds it, and
 * whether its top speed is ever reached.
 */
export function speedAnswer(first: JobEstimate, others: readonly JobEstimate[]): string {
  const fastest = others.reduce((best, one) => (one.time < best.time ? one : best), first);
  return `${verdict(first, fastest, others)}; ${holders(fastest)}, and ${reach(fastest)}.`;
}

function verdict(first: JobEstimate, fastest: JobEstimate, others: readonly JobEstimate[]): string {
  const total = durationText(first.time);
  if (fastest !== first) {
    const saved = first.time - fastest.time;
    return `${pairingName(fastest)} saves ${durationText(saved)} (${percent(saved / first.time)}) of the ${total} of ${pairingName(first)}`;
  }
  return others.length === 0
    ? `${pairingName(first)} takes ${total}`
    : `No other pairing saves time against ${pairingName(first)}, which takes ${total}`;
}

/** The two bounds under which most of the time is spent. */
function holders({ holders: held, time }: JobEstimate): string {
  const [most, next] = held.map(
    ({ holder, time: spent }) => `${holder} for ${percent(spent / time)} of its time`,
  );
  return next === undefined
    ? `it is held by ${most ?? 'nothing'}`
    : `it is held by ${most} and by ${next.replace(' of its time', '')}`;
}

function reach({ topSpeed, printPeak, travelPeak }: JobEstimate): string {
  const peaks = [
    ...(printPeak === null ? [] : [`${speed(printPeak)} while printing`]),
    ...(travelPeak === null ? [] : [`${speed(travelPeak)} on travel moves`]),
  ].join(' and ');
  if (topSpeed === null) return `it goes up to ${peaks}`;
  const top = `its ${topSpeed.basis} top speed of ${speed(topSpeed.value)}`;
  if (reaches(printPeak, topSpeed.value)) return `${top} is reached while printing`;
  if (reaches(travelPeak, topSpeed.value))
    return `${top} is reached on travel moves only, it prints at up to ${speed(printPeak ?? 0)}`;
  return `${top} is never reached: it goes up to ${peaks}`;
}

/** Rounding of the policy may leave a step to the stated speed. */
function reaches(peak: MillimetresPerSecond | null, top: MillimetresPerSecond): boolean {
  return peak !== null && peak >= 0.995 * top;
}

/** A duration for reading: minutes with one decimal, from two hours on hours and minutes. */
export function durationText(time: Seconds): string {
  const minutes = time / 60;
  if (Math.abs(minutes) < 119.95) return `${formatNumber(minutes, { decimals: 1 })} min`;
  const whole = Math.round(Math.abs(minutes));
  return `${minutes < 0 ? '-' : ''}${Math.floor(whole / 60)} h ${whole % 60} min`;
}

/** A share for reading, in whole percent. */
export function percent(share: Fraction): string {
  return `${formatNumber(100 * share, { decimals: 0 })} %`;
}

function speed(value: MillimetresPerSecond): string {
  return `${formatNumber(value, { decimals: 0 })} mm/s`;
}
