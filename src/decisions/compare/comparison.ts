import type { Origin } from '../../knowledge/origin.ts';
import type { TableInput } from '../../tables/derive/speed-table.ts';
import type { Count, Fraction, Millimetres, Money, Seconds } from '../../units/canonical.ts';
import type { HourlyCosts, NoFigure } from './hourly-costs.ts';
import type { JobEstimate } from './job-estimate.ts';

/** An estimate against that of the first pairing. */
export interface ComparedEstimate extends JobEstimate {
  /** Null for the first pairing; below 0 where this one is slower. */
  readonly saved: { readonly time: Seconds; readonly share: Fraction } | null;
  /** Price of this machine less that of the first; null where one is not known or the currencies differ. */
  readonly priceDifference: Money | null;
  /** Power, wear and labour of the job, as far as they were given; null where none was. */
  readonly runningCost: Money | null;
  /** Price difference, less the running cost saved, over the hours saved in all jobs; null where no jobs were given, or none follows. */
  readonly savedHourPrice: Money | null;
  /** Why there is no such price; null where there is one, or none was asked for. */
  readonly savedHourGap: NoFigure | null;
  /** Jobs after which the hours saved are worth the price difference; null where nothing says their worth, or none follows. */
  readonly paysAfterJobs: Count | null;
  /** Why there is no such number; null where there is one, or none was asked for. */
  readonly paysGap: NoFigure | null;
}

/** Pairings on a job; the others are compared with the first. */
export interface Comparison {
  readonly job: { readonly id: string; readonly name: string };
  /** Id of the house rules; where pairings follow different ones, all of them. */
  readonly policy: string;
  /** Height of the layers above the first, where another than that of the job was asked for; else null. */
  readonly layerHeight: Millimetres | null;
  /** Share that is used of what the policy lets melt; all of it where it is 1. */
  readonly meltShare: Fraction;
  /** Number of such jobs over which a difference of price is spread; null where it was not given. */
  readonly jobs: Count | null;
  /** What an hour is worth; null where it was not given. */
  readonly hourValue: Money | null;
  /** What an hour of printing costs besides filament, as far as it was given. */
  readonly hourlyCosts: HourlyCosts;
  /** "Do I need the speed?" in one sentence. */
  readonly answer: string;
  readonly estimates: readonly ComparedEstimate[];
  /** What the numbers were derived from. */
  readonly inputs: readonly TableInput[];
  /** What of it is simulated or invented. */
  readonly origin: Origin;
}

/** A pairing as it is written on the command line: `MACHINE:NOZZLE+FILAMENT`. */
export function pairingName({ machine, nozzle, filament }: JobEstimate): string {
  return `${machine}:${nozzle}+${filament}`;
}
