import type { MillimetresPerSecond } from '../../units/canonical.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { pairingName } from './comparison.ts';
import { durationText, limiterTexts, percent, savingText } from './format-duration.ts';
import type { JobEstimate } from './job-estimate.ts';
import { limiterWords } from './limiter-words.ts';

/**
 * "Do I need the speed?" in one sentence: the fastest pairing, what it saves against the first, what limits it, and
 * whether its top speed is ever reached.
 */
export function speedAnswer(first: JobEstimate, others: readonly JobEstimate[]): string {
  const fastest = others.reduce((best, one) => (one.time < best.time ? one : best), first);
  return `${verdict(first, fastest, others)}; ${limiters(fastest)}, and ${reach(fastest)}.`;
}

function verdict(first: JobEstimate, fastest: JobEstimate, others: readonly JobEstimate[]): string {
  const total = durationText(first.time);
  if (fastest !== first) {
    const share = percent((first.time - fastest.time) / first.time);
    return `${pairingName(fastest)} saves ${savingText(first, fastest)} (${share}) of the ${total} of ${pairingName(first)}`;
  }
  const name = pairingName(first);
  return others.length === 0 ? `${name} takes ${total}` : `${name} is the fastest of all with ${total}`;
}

/** The two bounds under which most of the time is spent. */
function limiters(estimate: JobEstimate): string {
  const [most, next] = [...limiterTexts(estimate)].map(([limiter, { share }]) => ({
    words: limiterWords[limiter],
    share,
  }));
  const first = `it is limited by ${most?.words ?? 'nothing'} for ${most?.share ?? percent(0)} of its time`;
  return next === undefined ? first : `${first} and by ${next.words} for ${next.share}`;
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
    return `${top} is reached on travel moves only; it prints at up to ${speed(printPeak ?? 0)}`;
  return `${top} is never reached: it goes up to ${peaks}`;
}

/** Rounding of the policy may leave a step to the stated speed. */
function reaches(peak: MillimetresPerSecond | null, top: MillimetresPerSecond): boolean {
  return peak !== null && peak >= 0.995 * top;
}

function speed(value: MillimetresPerSecond): string {
  return `${formatNumber(value, { decimals: 0 })} mm/s`;
}
