import type { Profile } from '../../registry/profile.ts';
import { scalarText } from '../../registry/yaml/edit-yaml.ts';
import { fromCanonical } from '../../units/convert-unit.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import { parseQuantity, parseRange } from '../../units/parse-quantity.ts';
import { requireUnit } from '../../units/unit-table.ts';
import { methodOf } from '../methods.ts';
import type { ReducedResult, TrialResults } from '../reduction.ts';
import { type AdoptableLimit, type StatedCondition, supportsNothing } from './adoptable-limit.ts';
import { limitsOfMethod } from './adoptable-limits.ts';
import { readingsDigest } from './readings-digest.ts';
import { roundedOutward, roundedSafely, statedRounding } from './stated-digits.ts';

/** A statement that a reduction supports, as it is written into a profile. */
export interface AdoptedStatement {
  readonly property: string;
  readonly value: string;
  readonly interval: string | null;
  /** Digest of the readings that it rests on; null where they cannot be read. */
  readonly readings: string | null;
  /** Content of `at`; empty where the value holds in general. */
  readonly at: ReturnType<typeof conditionsKnown>;
  /** mm/s2, where the trial found a value for each of several. */
  readonly acceleration: number | null;
  readonly note: string | null;
  /** Whether a written statement says the same, to the digits that are stated. */
  readonly agreesWith: (written: WrittenStatement) => boolean;
  /** Whether a written value is this one or on the safe side of it. */
  readonly allows: (written: unknown) => boolean;
}

/** What of a reduction a profile of the kind can state, on the safe side; results that support nothing are left out. */
export function adoptedStatements(
  trial: Profile<'trial'>,
  reduction: TrialResults,
  kind: AdoptableLimit['kind'],
): AdoptedStatement[] {
  const limits = limitsOfMethod(reduction.method, kind);
  const supported = reduction.results.flatMap((result) => {
    const limit = limits.find(({ quantity }) => quantity === result.quantity);
    return limit === undefined || supportsNothing(result, limit) ? [] : [{ result, limit }];
  });
  const single = supported.flatMap(({ result, limit }) =>
    limit.end === undefined ? [singleStatement(trial, result, limit)] : [],
  );
  const [low, high] = (['low', 'high'] as const).map((end) =>
    supported.find(({ limit }) => limit.end === end),
  );
  if (low === undefined || high === undefined) return single;
  return [...single, windowStatement(trial, low, high)];
}

interface Supported {
  readonly result: ReducedResult;
  readonly limit: AdoptableLimit;
}

function singleStatement(
  trial: Profile<'trial'>,
  result: ReducedResult,
  limit: AdoptableLimit,
): AdoptedStatement {
  return {
    property: limit.property,
    value: `${safeNumber({ result, limit })} ${unitCode({ result, limit })}`,
    interval: intervalText({ result, limit }),
    at: conditionsKnown(trial, limit, result.at?.acceleration),
    acceleration: result.at?.acceleration ?? null,
    note: noteText(trial, result, limit),
    readings: readingsDigest(trial),
    agreesWith: (written) =>
      agrees(written.value, [result.value], result) && agrees(written.interval, endsOf(result), result),
    allows: (written) => isOnSafeSide(written, result, limit),
  };
}

function windowStatement(trial: Profile<'trial'>, low: Supported, high: Supported): AdoptedStatement {
  return {
    property: low.limit.property,
    value: `${safeNumber(low)}..${safeNumber(high)} ${unitCode(low)}`,
    interval: null,
    at: conditionsKnown(trial, low.limit, undefined),
    acceleration: null,
    note: null,
    readings: readingsDigest(trial),
    agreesWith: ({ value }) => agrees(value, [low.result.value, high.result.value], low.result),
    allows: () => false,
  };
}

type WrittenStatement = Readonly<Record<string, unknown>>;

function endsOf({ interval: { low, high } }: ReducedResult): number[] {
  return low === null || high === null ? [] : [low, high];
}

/** Whether a text states these numbers, apart from rounding; where there are none to state, whether it is missing. */
function agrees(written: unknown, numbers: readonly number[], { dimension }: ReducedResult): boolean {
  if (typeof written !== 'string') return written === undefined && numbers.length === 0;
  const range = parseRange(written, dimension);
  const single = parseQuantity(written, dimension);
  const stated = single.ok ? [single.value.value] : range.ok ? [range.value.low, range.value.high] : [];
  const near = (one: number, other = Number.NaN) =>
    Math.abs(one - other) <= statedRounding * Math.max(Math.abs(one), Math.abs(other));
  return stated.length === numbers.length && stated.every((one, index) => near(one, numbers[index]));
}

function isOnSafeSide(
  written: unknown,
  { value, dimension }: ReducedResult,
  { safeSide }: AdoptableLimit,
): boolean {
  const parsed = typeof written === 'string' ? parseQuantity(written, dimension) : null;
  if (!parsed?.ok) return false;
  if (safeSide === 'inside') return false;
  return safeSide === 'below' ? parsed.value.value <= value : parsed.value.value >= value;
}

function unitCode({ result: { dimension }, limit: { unit } }: Supported): string {
  return unit ?? dimensionInfo[dimension].canonicalUnit ?? '';
}

function inStatedUnit(value: number, supported: Supported): number {
  return fromCanonical(value, requireUnit(unitCode(supported), supported.result.dimension));
}

function safeNumber(supported: Supported): string {
  const value = inStatedUnit(supported.result.value, supported);
  return formatNumber(roundedSafely(value, supported.limit));
}

function intervalText(supported: Supported): string | null {
  const { interval } = supported.result;
  if (interval.low === null || interval.high === null) return null;
  const ends = [interval.low, interval.high].map((end) => inStatedUnit(end, supported));
  const { low, high } = roundedOutward(ends[0] ?? Number.NaN, ends[1] ?? Number.NaN);
  return `${formatNumber(low)}..${formatNumber(high)} ${unitCode(supported)}`;
}

/**
 * What a trial knows of the conditions that a limit holds for, as profiles write them; `acceleration`, in mm/s2, is that
 * of the result where the trial found several.
 */
export function conditionsKnown(
  { data }: Profile<'trial'>,
  { holdsFor }: AdoptableLimit,
  acceleration: number | undefined = data.conditions.acceleration,
): (readonly [name: StatedCondition, text: string])[] {
  const { machine, nozzle, filament, batch, conditions } = data;
  const texts: Readonly<Record<StatedCondition, string | undefined>> = {
    machine: machine && scalarText(machine),
    nozzle: nozzle && scalarText(nozzle),
    filament: scalarText(filament),
    nozzleTemperature:
      conditions.nozzleTemperature === undefined
        ? undefined
        : formatQuantity(conditions.nozzleTemperature, 'temperature'),
    acceleration: acceleration === undefined ? undefined : formatQuantity(acceleration, 'acceleration'),
    batch: batch && scalarText(batch),
  };
  return holdsFor.flatMap((name) => {
    const text = texts[name];
    return text === undefined ? [] : [[name, text] as const];
  });
}

function noteText(
  { data }: Profile<'trial'>,
  { censored }: ReducedResult,
  { note, safeSide }: AdoptableLimit,
): string | null {
  const own = note?.(data) ?? null;
  if (own !== null || censored === null) return own;
  const { bound } = methodOf(data.method).openWords;
  return `${safeSide === 'above' ? 'Upper' : 'Lower'} bound; ${bound}.`;
}
