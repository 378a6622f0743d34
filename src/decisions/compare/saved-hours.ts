import type { Count, Money, Seconds } from '../../units/canonical.ts';
import type { ComparedEstimate } from './comparison.ts';
import type { JobEstimate } from './job-estimate.ts';

const SECONDS_PER_HOUR = 3600;

/** What a saving in time is compared with; null where it was not given. */
interface SavingTerms {
  /** Number of such jobs over which a difference of price is spread. */
  readonly jobs: Count | null;
  /** What an hour is worth. */
  readonly hourValue: Money | null;
}

/**
 * An estimate compared with that of the first pairing: time saved, difference of the machine prices, what a saved hour
 * costs when that difference is spread over a number of such jobs, and after how many the saved hours are worth it.
 * Filament, power, labour and wear are left out.
 */
export function against(
  first: JobEstimate,
  estimate: JobEstimate,
  { jobs, hourValue }: SavingTerms,
): ComparedEstimate {
  if (estimate === first) {
    return { ...estimate, saved: null, priceDifference: null, savedHourPrice: null, paysAfterJobs: null };
  }
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
    paysAfterJobs: paysAfter(time, priceDifference, hourValue),
  };
}

function paysAfter(saved: Seconds, price: Money | null, hour: Money | null): Count | null {
  if (price === null || hour === null || price.currency !== hour.currency) return null;
  const worth = (saved / SECONDS_PER_HOUR) * hour.amount;
  return price.amount > 0 && worth > 0 ? Math.ceil(price.amount / worth) : null;
}

function differenceOf(one: Money | undefined, other: Money | undefined): Money | null {
  if (one === undefined || other === undefined || one.currency !== other.currency) return null;
  return { amount: one.amount - other.amount, currency: one.currency };
}
