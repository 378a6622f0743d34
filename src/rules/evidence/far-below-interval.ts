import { limitsOfProperty } from '../../bench/adopt/adoptable-limits.ts';
import { intervalStatements, propertyOf } from '../../evidence/statement-intervals.ts';
import { trialLimit } from '../../evidence/trial-limit.ts';
import { statedFlowLimits } from '../../knowledge/flow-limits.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Path } from '../../registry/shape.ts';
import type { Dimension } from '../../units/dimension.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule, RuleContext } from '../engine/rule.ts';

/** Caution takes off some per cent; half is no caution any more (common practice, no source). */
const smallestShare = 0.5;

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'warning',
  statement: 'A value is at least half of what its interval or its trial supports.',
  rationale:
    'A limit far below what its readings support usually has a wrong digit, and makes every table slow.',
  source: 'Common practice, no source.',
  example: alike(
    'machine',
    { bad: '50 mm/s', good: '100 mm/s' },
    (value) => `
contourSpeed:
  - {value: ${value}, interval: 110..130 mm/s, basis: assumed, reason: Bench habit}`,
  ),
  *check(profile, context) {
    for (const { path, value, low, dimension, text } of supports(profile, context)) {
      if (value >= smallestShare * low) continue;
      yield {
        path: [...path, 'value'],
        part: 'value',
        message: `${shown(value, dimension)} is less than half of what ${text} supports`,
        found: shown(value, dimension),
        allowed: `from ${shown(smallestShare * low, dimension)}`,
        help: 'Check the digits; a margin belongs in the policy, not in the limit.',
      };
    }
  },
};

interface Support {
  readonly path: Path;
  readonly value: number;
  /** The least that is supported. */
  readonly low: number;
  readonly dimension: Dimension;
  readonly text: string;
}

/** What supports the values of a profile: their intervals, and for flow limits without one their trials. */
function supports(profile: AnyProfile, context: RuleContext): Support[] {
  const intervals = [...intervalStatements(profile)].flatMap(({ path, value, interval, dimension }) => {
    const text = `its interval ${shownRange(interval, dimension)}`;
    // Where below is an unsafe side, another rule judges it.
    const [limit] = limitsOfProperty(profile.kind, propertyOf(path));
    return limit?.safeSide === 'above' || limit?.safeSide === 'inside'
      ? []
      : [{ path, value, low: interval.low, dimension, text }];
  });
  const limits = statedFlowLimits(profile, context.registry).flatMap(({ path, value, statement }) => {
    const trial = context.registry.trial.get(statement.evidence ?? '');
    const measured = statement.basis === 'measured' && statement.interval === undefined;
    const limit = trial === undefined || !measured ? null : trialLimit(trial, context);
    if (trial === undefined || limit === null) return [];
    const text = `the trial "${trial.id}" (${shown(limit.low, 'volumeFlow')} or more)`;
    return [{ path: path.slice(0, -1), value, low: limit.low, dimension: 'volumeFlow' as const, text }];
  });
  return [...intervals, ...limits];
}
