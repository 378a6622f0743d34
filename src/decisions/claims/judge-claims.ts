import { type ReduceById, reducingOnce } from '../../bench/reducing-once.ts';
import { type ChosenRule, chooseRule } from '../../knowledge/decision-rule.ts';
import { type Origin, originOf } from '../../knowledge/origin.ts';
import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Result, success } from '../../result.ts';
import { type Claim, claimsOf } from './claim.ts';
import { highestFirst, measuredBeside, reachedBy, trialsOf } from './claim-evidence.ts';
import { type ClaimContext, type ClaimVerdict, type JudgedClaim, untestedClaim } from './claim-verdict.ts';
import { withFeed } from './claimed-speed-feed.ts';
import { judgeFlowClaim } from './judge-flow-claim.ts';
import { judgeMeasured } from './judge-measured.ts';
import { judgeHeaterClaim, judgeSettingClaim, judgeTestedClaim } from './judge-other-claims.ts';
import { judgeSpeedClaim } from './judge-speed-claim.ts';

/** What judging claims needs to know besides the registry. */
export interface ClaimsOptions {
  /** Today's date, YYYY-MM-DD: what profiles acknowledge, they acknowledge until a date. */
  readonly today: string;
  /** Id of the policy whose decision rule counts; by default the only one of the registry. */
  readonly policy?: string;
  /** Reduces a trial; a caller that judges several machines passes one function for all of them. */
  readonly reduce?: ReduceById;
}

/** The claims of a machine with what has become of them. */
export interface ClaimReport {
  readonly machine: string;
  /** By which rule the claims were decided. */
  readonly decision: ChosenRule;
  readonly claims: readonly JudgedClaim[];
  /** What of it is simulated or invented. */
  readonly origin: Origin;
}

/**
 * Compares every claim of a machine's sheet, except the price, with the registry's trials and measured statements:
 * held, not contradicted, not reached (by how much, with its interval), untested, or not reachable in principle; by simple
 * acceptance also accepted or rejected. Each with the probability that it holds, where its evidence tells one.
 */
export function judgeClaims(
  registry: Registry,
  machineId: string,
  { today, policy, reduce = reducingOnce(registry) }: ClaimsOptions,
): Result<ClaimReport, UnknownProfile<'machine' | 'policy'>> {
  const machine = findProfile(registry, 'machine', machineId);
  if (!machine.ok) return machine;
  const decision = chooseRule(registry, policy);
  if (!decision.ok) return decision;
  const { rule } = decision.value;
  const context = { registry, today, rule, reduce };
  const claims = claimsOf(machine.value).map((claim) => ({ claim, ...judge(machine.value, claim, context) }));
  const trials = claims.flatMap(({ evidence }) => evidence.flatMap(({ trial }) => trial ?? []));
  return success({
    machine: machineId,
    decision: decision.value,
    claims,
    origin: originOf(registry, { profiles: [machine.value], trials }),
  });
}

function judge(machine: Profile<'machine'>, claim: Claim, context: ClaimContext): ClaimVerdict {
  const measured = measuredBeside(machine, claim, context);
  const trials = trialsOf(context.registry, machine.id, claim.hotEnd);
  switch (claim.property) {
    case 'meltFlow':
      return judgeFlowClaim(machine, claim, context);
    case 'topSpeed': {
      const reached = reachedBy(trials, 'reachedSpeed', claim.statement.value, context);
      return judgeSpeedClaim(machine, claim, highestFirst([...reached, ...measured]), context);
    }
    case 'acceleration': {
      const reached = reachedBy(trials, 'reachedAcceleration', claim.statement.value, context);
      const all = highestFirst([...reached, ...measured]);
      return judgeMeasured(claim, all, context.rule) ?? untestedClaim('no trial has timed it');
    }
    case 'contourSpeed': {
      const verdict = judgeTestedClaim(claim, claim.property, trials, measured, context);
      return withFeed(verdict, machine, claim.statement.value, context);
    }
    case 'soundLevel':
      return judgeTestedClaim(claim, claim.property, trials, measured, context);
    case 'heaterPower':
      return judgeHeaterClaim(claim, trials, context);
    default:
      if (claim.limits !== null) {
        return judgeSettingClaim(claim, claim.limits, trials, measured, context);
      }
      return judgeMeasured(claim, measured, context.rule) ?? untestedClaim('no trial measures it');
  }
}
