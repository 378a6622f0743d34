import type { TableInput } from '../../tables/derive/speed-table.ts';
import type { Count, Fraction, Money, Seconds } from '../../units/canonical.ts';
import type { JobEstimate } from './job-estimate.ts';

/** An estimate against that of the first pairing. */
export interface ComparedEstimate extends JobEstimate {
  /** Null for the first pairing; below 0 where this one is slower. */
  readonly saved: { readonly time: Seconds; readonly share: Fraction } | null;
  /** Price of this machine less that of the first; null where one is not known or the currencies differ. */
  readonly priceDifference: Money | null;
  /** Price difference over the hours saved in all jobs, an hour; null unless both are above 0 and the jobs are given. */
  readonly savedHourPrice: Money | null;
  /** Jobs after which the hours saved are worth the price difference; null unless all three are above 0. */
  readonly paysAfterJobs: Count | null;
}

/** Pairings on a job; the others are compared with the first. */
export interface Comparison {
  readonly job: { readonly id: string; readonly name: string };
  readonly policy: string;
  /** Number of such jobs over which a difference of price is spread; null where it was not given. */
  readonly jobs: Count | null;
  /** What an hour is worth; null where it was not given. */
  readonly hourValue: Money | null;
  /** "Do I need the speed?" in one sentence. */
  readonly answer: string;
  readonly estimates: readonly ComparedEstimate[];
  /** What the numbers were derived from. */
  readonly inputs: readonly TableInput[];
}

/** A pairing as it is written on the command line: `MACHINE:NOZZLE+FILAMENT`. */
export function pairingName({ machine, nozzle, filament }: JobEstimate): string {
  return `${machine}:${nozzle}+${filament}`;
}
