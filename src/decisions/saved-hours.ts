import type { Count, Money } from '../units/canonical.ts';
import type { ComparedEstimate } from './comparison.ts';
import type { JobEstimate } from './job-estimate.ts';

const SECONDS_PER_HOUR = 3600;

/**
 * An estimate held against that of the first pairing: time saved, difference of the machine prices, and what a saved
 * hour costs when that difference is spread over a number of such jobs. Filament, power, labour and wear are left out.
 */
export function against(first: JobEstimate, estimate: JobEstimate, jobs: Count | null): ComparedEstimate {
  if (estimate === first) return { ...estimate, saved: null, priceDifference: null, savedHourPrice: null };
  const time = first.time - estimate.time;
  const priceDifference = differenceOf(estimate.price?.value, first.price?.value);
  const hours = (time / SECONDS_PER_HOUR) * (jobs ?? 0);
  return {
    ...estimate,
    saved: { time, share: time / first.time },
    priceDifference,
    savedHourPrice:
      priceDifference !== null && priceDifference.amount > 0 && hours > 0
        ? { amount: priceDifference.amount / hours, currency: priceDifference.currency }
        : null,
  };
}

function differenceOf(one: Money | undefined, other: Money | undefined): Money | null {
  if (one === undefined || other === undefined || one.currency !== other.currency) return null;
  return { amount: one.amount - other.amount, currency: one.currency };
}
