import { type AdoptableLimit, statedUnit, supportsNothing } from '../bench/adopt/adoptable-limit.ts';
import { limitsOfMethod, limitsOfProperty, resultFor } from '../bench/adopt/adoptable-limits.ts';
import { statedRounding } from '../bench/adopt/stated-digits.ts';
import { allMethods, methodOf } from '../bench/methods.ts';
import type { ReducedResult, TrialResults } from '../bench/reduction.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, Profile } from '../registry/profile.ts';
import { isObject, type Path } from '../registry/shape.ts';
import type { PlacedStatement } from '../registry/statement.ts';
import type { Range } from '../units/canonical.ts';
import { formatQuantity, formatRange } from '../units/format-quantity.ts';
import { changedReadings } from './changed-readings.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { propertyOf } from './statement-intervals.ts';

/** What in a measured statement its trial does not support: the value, or only the interval beside it. */
interface SupportFault {
  readonly part: 'value' | 'interval';
  readonly hit: Hit;
}

/**
 * What the readings of its trial say against a measured limit; nothing where no trial can be asked, which has a finding
 * of its own.
 */
export function* supportFaults(
  profile: AnyProfile,
  { path, statement }: PlacedStatement<Statement<unknown>>,
  { registry, reduce }: EvidenceContext,
): Generator<SupportFault> {
  if (statement.basis !== 'measured' || statement.evidence === undefined) return;
  const trial = registry.trial.get(statement.evidence);
  if (trial === undefined) return;
  const property = propertyOf(path);
  const limits = limitsOfMethod(trial.data.method, profile.kind).filter(
    (limit) => limit.property === property,
  );
  if (limits.length === 0) {
    yield { part: 'value', hit: otherMethod(path, trial, limitsOfProperty(profile.kind, property)) };
    return;
  }
  if (!registry.filament.has(trial.data.filament)) return;
  const reduced = reduce(trial.id);
  const stated = statedLimits(path, statement, limits, trial.id);
  if (!reduced.ok) {
    yield { part: 'value', hit: noResult(path, trial.id) };
    return;
  }
  const faults = stated.flatMap((limit) => [...judge(limit, reduced.value, statement.at?.acceleration)]);
  // Readings that were changed since have a finding at their trial; another interval is what comes of it.
  const isChanged = changedReadings(statement, trial) !== null;
  // Whatever is wrong with the name of the trial comes first.
  const blames = [{ path: [...path, 'evidence'] }];
  const standing = faults.filter(({ part }) => part === 'value' || !isChanged);
  yield* standing.map(({ part, hit }) => ({ part, hit: { ...hit, blames } }));
}

function statedLimits(
  path: Path,
  { value, interval }: Statement<unknown>,
  limits: readonly AdoptableLimit[],
  trial: string,
): StatedLimit[] {
  return limits.flatMap((limit) => {
    const part = statedValue(value, limit);
    return part === null ? [] : [{ path, limit, value: part, interval, trial }];
  });
}

/** What a statement says of one limit. */
interface StatedLimit {
  readonly path: Path;
  readonly limit: AdoptableLimit;
  readonly value: number;
  readonly interval: Range | undefined;
  readonly trial: string;
}

/** The stated value, or the end of the stated window, that a limit is about. */
function statedValue(value: unknown, { end }: AdoptableLimit): number | null {
  const part = isObject(value) && end !== undefined ? value[end] : value;
  return typeof part === 'number' ? part : null;
}

function noResult(path: Path, trial: string): Hit {
  return {
    path: [...path, 'evidence'],
    part: 'value',
    message: `The trial "${trial}" cannot be reduced, so it supports no limit`,
    help: 'Fix the trial first; its own findings say what is wrong.',
    blames: [{ of: { kind: 'trial', id: trial }, path: ['observations'] }],
  };
}

function* judge(
  stated: StatedLimit,
  reduction: TrialResults,
  acceleration: number | undefined,
): Generator<SupportFault> {
  const result = resultFor(reduction, stated.limit.quantity, acceleration);
  if (result === null) {
    yield { part: 'value', hit: noSuchResult(stated, reduction) };
    return;
  }
  if (supportsNothing(result, stated.limit)) {
    yield { part: 'value', hit: nothingHeld(stated, reduction) };
    return;
  }
  const { low, high } = result.interval;
  const recomputed = low === null || high === null ? null : { low, high };
  if (isUnsafe(stated, result)) yield { part: 'value', hit: unsafe(stated, result, recomputed) };
  else if (stated.interval !== undefined && !agrees(stated.interval, recomputed)) {
    yield {
      part: 'interval',
      hit: otherInterval(stated, stated.interval, result, givenText(stated, reduction, result)),
    };
  }
}

function isUnsafe({ value, limit }: StatedLimit, result: ReducedResult): boolean {
  const slack = statedRounding * Math.abs(result.value);
  const { low, high } = result.interval;
  switch (limit.safeSide) {
    case 'below':
      return value > result.value + slack;
    case 'above':
      return value < result.value - slack;
    case 'inside':
      return low === null || high === null || value < low - slack || value > high + slack;
    default:
      return limit.safeSide satisfies never;
  }
}

function agrees(stated: Range, recomputed: Range | null): boolean {
  if (recomputed === null) return false;
  const near = (a: number, b: number) =>
    Math.abs(a - b) <= statedRounding * Math.max(Math.abs(a), Math.abs(b));
  return near(stated.low, recomputed.low) && near(stated.high, recomputed.high);
}

function otherMethod(path: Path, { id, data }: Profile<'trial'>, limits: readonly AdoptableLimit[]): Hit {
  const property = propertyOf(path);
  const methods = methodsFinding(limits);
  return {
    path: [...path, 'evidence'],
    part: 'value',
    blames: [{ path: [...path, 'evidence'] }],
    message: `The trial "${id}" is a ${data.method}, which does not measure ${property}`,
    found: data.method,
    allowed: methods.length === 0 ? `no measured ${property}: no method finds it` : methods.join(' or '),
    help:
      methods.length === 0
        ? 'Write `basis: derived` with a `reason` that says how the value follows from the trial, or name the source that states it.'
        : 'Name a trial whose method measures it, under the same conditions.',
  };
}

function methodsFinding(limits: readonly AdoptableLimit[]): string[] {
  return allMethods.flatMap(({ method, adoptable }) =>
    adoptable.some(({ kind, place }) => limits.some((limit) => limit.kind === kind && limit.place === place))
      ? [method]
      : [],
  );
}

/** The method measures the property, but these readings do not: those of a ladder of another setting, for instance. */
function noSuchResult({ path, limit, trial }: StatedLimit, { method, results }: TrialResults): Hit {
  const isPerAcceleration = results.some(
    ({ quantity, at }) => quantity === limit.quantity && at !== undefined,
  );
  return {
    path: [...path, 'evidence'],
    part: 'value',
    message: `The ${method} "${trial}" gives no ${limit.property} ${isPerAcceleration ? 'at the acceleration of the statement' : 'here'}`,
    help: isPerAcceleration
      ? 'Name under `at` one of the accelerations that the trial was run at.'
      : 'Name a trial that finds it, under the same conditions.',
  };
}

function nothingHeld({ path, trial, limit }: StatedLimit, { method }: TrialResults): Hit {
  const { noSupport, help } = methodOf(method).openWords;
  return {
    path: [...path, 'evidence'],
    part: 'value',
    message: `In the trial "${trial}" ${noSupport}: it supports no ${limit.property}`,
    help: `${help}, or drop this statement.`,
  };
}

/** How a value on the unsafe side is put in words, by the side that is safe. */
const unsafeWords = {
  below: { name: 'limit', lies: 'above', bound: 'a lower bound', allowed: 'up to', or: ' or less' },
  above: { name: 'limit', lies: 'below', bound: 'an upper bound', allowed: 'from', or: ' or more' },
  inside: { name: 'value', lies: 'outside of', bound: 'a bound', allowed: 'near', or: '' },
} as const satisfies Readonly<Record<AdoptableLimit['safeSide'], unknown>>;

function unsafe(
  { path, value, limit, trial }: StatedLimit,
  result: ReducedResult,
  interval: Range | null,
): Hit {
  const { dimension } = result;
  const written = formatQuantity(value, dimension, statedUnit(limit));
  const estimate = formatQuantity(result.value, dimension, { significantDigits: 3, ...statedUnit(limit) });
  const words = unsafeWords[limit.safeSide];
  const range = interval === null ? null : rangeText(interval, result, limit);
  const between = range === null ? `, ${words.bound}` : ` (95 % interval ${range})`;
  return {
    path: [...path, 'value'],
    part: 'value',
    message: `The ${words.name} ${written} is ${words.lies} what the trial "${trial}" supports: its readings give ${estimate}${between}`,
    found: written,
    allowed: limit.safeSide === 'inside' && range !== null ? range : `${words.allowed} ${estimate}`,
    help: `Compare the readings and this value with the bench sheet; where the readings are right, write \`${estimate}\`${words.or}.`,
  };
}

function otherInterval(
  { path, limit, trial }: StatedLimit,
  stated: Range,
  result: ReducedResult,
  given: string,
): Hit {
  return {
    path: [...path, 'interval'],
    part: 'value',
    message: `The interval ${rangeText(stated, result, limit)} is not the one that the readings of the trial "${trial}" give: ${given}`,
    found: rangeText(stated, result, limit),
    allowed: given,
    help: `Compare the readings with the bench sheet; where they are right, run \`meltbounds reduce ${trial} --adopt\`.`,
  };
}

/** The interval that the readings give, or why they give none. */
function givenText({ limit }: StatedLimit, { method }: TrialResults, result: ReducedResult): string {
  const { low, high } = result.interval;
  return low === null || high === null
    ? `none, since ${methodOf(method).openWords.noInterval}`
    : rangeText({ low, high }, result, limit);
}

function rangeText({ low, high }: Range, { dimension }: ReducedResult, limit: AdoptableLimit): string {
  return formatRange(low, high, dimension, { significantDigits: 3, ...statedUnit(limit) });
}
