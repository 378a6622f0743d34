import type { Count, Money, Seconds } from '../../units/canonical.ts';
import type { ComparedEstimate } from './comparison.ts';
import type { HourlyCosts, NoFigure } from './hourly-costs.ts';
import { runningCost } from './hourly-costs.ts';
import type { JobEstimate } from './job-estimate.ts';

const SECONDS_PER_HOUR = 3600;

/** What a saving in time is compared with; null where it was not given. */
interface SavingTerms {
  /** Number of such jobs over which a difference of price is spread. */
  readonly jobs: Count | null;
  /** What an hour is worth. */
  readonly hourValue: Money | null;
  /** What an hour of printing costs besides. */
  readonly hourlyCosts: HourlyCosts;
}

/** A figure, or why there is none. */
type Figure<Value> =
  | { readonly value: Value; readonly gap: null }
  | { readonly value: null; readonly gap: NoFigure };

/** A more expensive machine that is faster. */
interface Saving {
  readonly price: Money;
  readonly time: Seconds;
}

/**
 * An estimate compared with that of the first pairing: time saved, difference of the machine prices, what a saved hour
 * costs when that difference, less what power, wear and labour save, is spread over a number of such jobs, and after how
 * many the hours saved are worth it. Filament is left out.
 */
export function against(first: JobEstimate, estimate: JobEstimate, terms: SavingTerms): ComparedEstimate {
  const cost = runningCost(estimate.time, terms.hourlyCosts);
  if (estimate === first) {
    return {
      ...{ ...estimate, runningCost: cost, saved: null, priceDifference: null },
      ...{ savedHourPrice: null, savedHourGap: null, paysAfterJobs: null, paysGap: null },
    };
  }
  const time = first.time - estimate.time;
  const saving = savingOf(first, estimate);
  const hour = terms.jobs === null ? null : savedHour(saving, terms.jobs, terms);
  const pays = paysAfter(saving, terms);
  return {
    ...{ ...estimate, runningCost: cost, saved: { time, share: time / first.time } },
    priceDifference: differenceOf(estimate.price?.value, first.price?.value),
    ...{ savedHourPrice: hour?.value ?? null, savedHourGap: hour?.gap ?? null },
    ...{ paysAfterJobs: pays?.value ?? null, paysGap: pays?.gap ?? null },
  };
}

/** What is paid and what is saved, or why the question does not arise. */
function savingOf(first: JobEstimate, estimate: JobEstimate): Figure<Saving> {
  const [one, other] = [estimate.price?.value, first.price?.value];
  if (one === undefined || other === undefined) return { value: null, gap: 'priceUnknown' };
  const price = differenceOf(one, other);
  if (price === null) return { value: null, gap: 'pricesDiffer' };
  const time = first.time - estimate.time;
  if (!(time > 0)) return { value: null, gap: 'savesNothing' };
  return price.amount > 0 ? { value: { price, time }, gap: null } : { value: null, gap: 'notDearer' };
}

function savedHour(saving: Figure<Saving>, jobs: Count, { hourlyCosts }: SavingTerms): Figure<Money> {
  if (saving.value === null) return saving;
  const { price, time } = saving.value;
  const cost = runningCost(time, hourlyCosts);
  if (cost !== null && cost.currency !== price.currency) return { value: null, gap: 'otherCurrency' };
  const hours = (time / SECONDS_PER_HOUR) * jobs;
  const amount = (price.amount - jobs * (cost?.amount ?? 0)) / hours;
  return amount > 0
    ? { value: { amount, currency: price.currency }, gap: null }
    : { value: null, gap: 'paidAlready' };
}

/** Null where nothing says what an hour is worth. */
function paysAfter(saving: Figure<Saving>, { hourValue, hourlyCosts }: SavingTerms): Figure<Count> | null {
  const hour = runningCost(SECONDS_PER_HOUR, hourlyCosts);
  const worths = [hourValue, hour].filter((money) => money !== null);
  if (worths.length === 0) return null;
  if (saving.value === null) return saving;
  const { price, time } = saving.value;
  if (worths.some(({ currency }) => currency !== price.currency))
    return { value: null, gap: 'otherCurrency' };
  const worth = worths.reduce((sum, { amount }) => sum + amount, 0);
  return { value: Math.ceil(price.amount / ((time / SECONDS_PER_HOUR) * worth)), gap: null };
}

function differenceOf(one: Money | undefined, other: Money | undefined): Money | null {
  if (one === undefined || other === undefined || one.currency !== other.currency) return null;
  return { amount: one.amount - other.amount, currency: one.currency };
}
