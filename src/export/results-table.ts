import { readingsDigest } from '../bench/adopt/readings-digest.ts';
import type { ReducedResult } from '../bench/reduction.ts';
import type { Profile } from '../registry/profile.ts';
import { dimensionInfo } from '../units/dimension.ts';
import { figure, flag, quantity, whole, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, refersTo, rowOf } from './export-table.ts';

interface ExportedResult {
  readonly trial: Profile<'trial'>;
  readonly index: number;
  readonly result: ReducedResult;
}

/** One row per number that a reduction draws from readings. */
export const resultsTable: ExportTable<ExportedResult> = {
  name: 'results',
  title: 'Results of the trials',
  description:
    'One row per number that the readings of a trial give today, computed anew: between readings and the limits that profiles state.',
  primaryKey: ['trial_id', 'result_no'],
  foreignKeys: [refersTo('trials', 'trial_id')],
  columns: [
    words('trial_id', 'Trial', ({ trial }) => trial.id),
    whole('result_no', 'Place among the results of the trial, from 1', ({ index }) => index + 1),
    words('quantity', 'What was found, such as meltFlow', ({ result }) => result.quantity),
    figure(
      'value',
      'Median of what the readings leave possible, in the unit of the row; a bound where it is censored',
      ({ result }) => result.value,
    ),
    figure('interval_low', 'Lower end of the 95 % coverage interval', ({ result }) => result.interval.low),
    figure('interval_high', 'Upper end of it', ({ result }) => result.interval.high),
    words('unit', 'UCUM code of the unit', ({ result }) => dimensionInfo[result.dimension].canonicalUnit),
    words(
      'censored',
      'On which side of the tested range it lies: above or below; empty where the readings bracket it',
      ({ result }) => result.censored,
    ),
    quantity(
      'acceleration',
      'acceleration',
      'acceleration that it holds for, where the trial tried several',
      ({ result }) => result.at?.acceleration,
    ),
    words('readings_digest', 'Digest of the readings', ({ trial }) => readingsDigest(trial)),
    flag('is_simulated', 'Whether no bench has read them', ({ trial }) => trial.data.origin === 'simulated'),
  ],
};

/** The results of every trial that can be reduced, in the order of its files. */
export function* resultRows({ registry, reduce }: ExportSource): Generator<ExportedRow> {
  for (const trial of registry.trial.values()) {
    const reduced = reduce(trial.id);
    if (!reduced.ok) continue;
    for (const [index, result] of reduced.value.results.entries())
      yield rowOf(resultsTable, { trial, index, result });
  }
}
