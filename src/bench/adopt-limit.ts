import { appendToList, type EditFailure, replaceScalar, scalarText } from '../registry/edit-yaml.ts';
import type { Profile } from '../registry/profile.ts';
import { isObject } from '../registry/shape.ts';
import { failure, type Result, success } from '../result.ts';
import { formatQuantity, formatRange } from '../units/format-quantity.ts';
import type { ReducedResult } from './reduction.ts';
import { roundedDown, roundedOutward } from './stated-digits.ts';

/** Keys that follow the limits in a filament profile. */
const keysAfterLimits = ['contourSpeed', 'notice', 'fieldNotes', 'acknowledged'];

/**
 * Text of a filament profile with the melt flow limit of a trial written into it. A limit that the profile already
 * states for that trial is brought up to date; everything else, comments included, stays as it is.
 * The error is a sentence for the user.
 */
export function adoptLimit(
  filament: Profile<'filament'>,
  trial: Profile<'trial'>,
  result: ReducedResult,
): Result<string, string> {
  if (result.censored === 'below') {
    return failure(
      'The deficit is exceeded at the first step already: the readings support no limit to adopt.',
    );
  }
  const value = formatQuantity(roundedDown(result.value), result.dimension);
  const interval = intervalText(result);
  const stated = writtenLimits(filament);
  const index = stated.findIndex((limit) => limit?.evidence === trial.id);
  if (interval === null && stated[index]?.interval !== undefined) {
    return failure(`${filament.source.path} was not changed: ${staleInterval}`);
  }
  const edited =
    index === -1
      ? appendToList(
          filament.source.text,
          'meltFlow',
          statementLines(trial, value, interval),
          keysAfterLimits,
        )
      : restate(filament, index, value, interval);
  if (edited.ok) return success(edited.value);
  return failure(`${filament.source.path} was not changed: ${whyNot(edited.error, interval)}`);
}

const staleInterval =
  'its statement for this trial has an interval, but the ladder ended before the deficit was reached and gives none; delete the line `interval`.';

/** The limits as they are written: what does not fit the schema is not in the data, but counts in the places. */
function writtenLimits({ written }: Profile<'filament'>): (Record<string, unknown> | null)[] {
  const list = isObject(written) && Array.isArray(written.meltFlow) ? written.meltFlow : [];
  return list.map((limit: unknown) => (isObject(limit) ? limit : null));
}

function intervalText({ interval, dimension }: ReducedResult): string | null {
  if (interval.low === null || interval.high === null) return null;
  const { low, high } = roundedOutward(interval.low, interval.high);
  return formatRange(low, high, dimension);
}

function statementLines(trial: Profile<'trial'>, value: string, interval: string | null): string[] {
  const { machine, nozzle, conditions, date } = trial.data;
  const temperature = formatQuantity(conditions.nozzleTemperature, 'temperature');
  return [
    `value: ${value}`,
    ...(interval === null ? [] : [`interval: ${interval}`]),
    'basis: measured',
    `evidence: ${scalarText(trial.id)}`,
    `at: {machine: ${scalarText(machine)}, nozzle: ${scalarText(nozzle)}, nozzleTemperature: ${temperature}}`,
    `date: ${date}`,
    ...(interval === null ? ['note: Lower bound; the ladder ended before the deficit was reached.'] : []),
  ];
}

function whyNot(reason: EditFailure, interval: string | null): string {
  switch (reason) {
    case 'unreadable':
      return 'its YAML cannot be read; `meltbounds check` says where.';
    case 'noSuchPlace':
      return `its statement for this trial has no interval; add \`interval: ${interval}\` to it.`;
    case 'flowList':
      return 'its list "meltFlow" is not written one entry a line; start each entry on a line of its own with "- ".';
    case 'noRoom':
      return 'nothing can be added to it without breaking it; start each of its keys on a line of its own, at the left margin.';
    default:
      return reason satisfies never;
  }
}

function restate(filament: Profile<'filament'>, index: number, value: string, interval: string | null) {
  const withValue = replaceScalar(filament.source.text, ['meltFlow', index, 'value'], value);
  if (!withValue.ok || interval === null) return withValue;
  return replaceScalar(withValue.value, ['meltFlow', index, 'interval'], interval);
}
