import { limitsOfProperty } from '../bench/adopt/adoptable-limits.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { PlacedStatement } from '../registry/statement.ts';
import { shown, shownRange } from '../units/wording.ts';
import type { EvidenceContext } from './evidence-context.ts';
import { intervalStatement, propertyOf } from './statement-intervals.ts';

/** A value on the unsafe side of the interval that it is stated with, where no readings are there to judge it by. */
export function* ownIntervalHits(
  profile: AnyProfile,
  placed: PlacedStatement<Statement<unknown>>,
  { registry }: EvidenceContext,
): Generator<Hit> {
  const stated = intervalStatement(profile, placed);
  if (stated === null) return;
  const { path, value, interval, dimension, basis, evidence } = stated;
  const [limit] = limitsOfProperty(profile.kind, propertyOf(path));
  const recomputed = limit !== undefined && basis === 'measured' && registry.trial.has(evidence ?? '');
  const isTooLow = value < interval.low && (limit?.safeSide === 'above' || limit?.safeSide === 'inside');
  const isTooHigh = value > interval.high && limit?.safeSide !== 'above';
  if (recomputed || !(isTooLow || isTooHigh)) return;
  const beyond = limit?.safeSide === 'inside' ? '' : ` or ${isTooLow ? 'above' : 'below'}`;
  yield {
    path: [...path, 'value'],
    part: 'value',
    message: `${shown(value, dimension)} lies ${isTooLow ? 'below' : 'above'} its interval ${shownRange(interval, dimension)}`,
    found: shown(value, dimension),
    allowed: isTooLow ? `from ${shown(interval.low, dimension)}` : `up to ${shown(interval.high, dimension)}`,
    help: `Adopt a value within the interval${beyond}; check the digits of both.`,
  };
}
