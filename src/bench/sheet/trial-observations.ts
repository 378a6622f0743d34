import type { Profile } from '../../registry/profile.ts';
import { failure, type Result } from '../../result.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { readBenchSheet } from './bench-sheet.ts';
import type { ColumnPlan } from './column-plan.ts';
import { readInlineObservations } from './inline-observations.ts';
import type { Observations } from './observations.ts';

/** The raw readings of a trial, from the sheet beside it or from its own rows, in canonical units. */
export function trialObservations(
  { data, attachment }: Profile<'trial'>,
  plan: ColumnPlan,
): Result<Observations, readonly BenchProblem[]> {
  const { columns: units, rows } = data.observations;
  if (attachment?.ok) return readBenchSheet(attachment.source.text, plan);
  if (units !== undefined && rows !== undefined)
    return readInlineObservations({ columns: units, rows }, plan);
  return failure([
    {
      code: 'emptySheet',
      message: 'there are no readings that could be read',
      help: 'write them under `observations`, or name a CSV file beside the trial',
    },
  ]);
}
