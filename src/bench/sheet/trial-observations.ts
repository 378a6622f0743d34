import type { Profile } from '../../registry/profile.ts';
import { failure, type Result } from '../../result.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { readBenchSheet } from './bench-sheet.ts';
import type { ColumnPlan } from './column-plan.ts';
import { readInlineObservations } from './inline-observations.ts';
import type { Observations } from './observations.ts';

type ReadObservations = Result<Observations, readonly BenchProblem[]>;

/** What was read of a trial by a plan: several rules, the reduction and the digest ask for the same sheet. */
const known = new WeakMap<Profile<'trial'>, { readonly plan: ColumnPlan; readonly read: ReadObservations }>();

/** The raw readings of a trial, from the sheet beside it or from its own rows, in canonical units. */
export function trialObservations(trial: Profile<'trial'>, plan: ColumnPlan): ReadObservations {
  const before = known.get(trial);
  if (before?.plan === plan) return before.read;
  const read = readObservations(trial, plan);
  known.set(trial, { plan, read });
  return read;
}

function readObservations({ data, attachment }: Profile<'trial'>, plan: ColumnPlan): ReadObservations {
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
