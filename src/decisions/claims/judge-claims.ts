import { reducingOnce } from '../../bench/reducing-once.ts';
import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import { type Origin, originOf } from '../../knowledge/origin.ts';
import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Result, success } from '../../result.ts';
import { type Claim, claimsOf } from './claim.ts';
import { highestFirst, measuredBeside, reachedBy, trialsOf } from './claim-evidence.ts';
import type { ClaimVerdict, JudgedClaim } from './claim-verdict.ts';
import { withFeed } from './claimed-speed-feed.ts';
import { judgeFlowClaim } from './judge-flow-claim.ts';
import { judgeMeasured } from './judge-measured.ts';
import {
  judgeHeaterClaim,
  judgeSettingClaim,
  judgeTestedClaim,
  untestedClaim,
} from './judge-other-claims.ts';
import { judgeSpeedClaim } from './judge-speed-claim.ts';

/** What judging claims needs to know besides the registry. */
export interface ClaimsOptions {
  /** Today's date, YYYY-MM-DD: what profiles acknowledge, they acknowledge until a date. */
  readonly today: string;
}

/** The claims of a machine with what has become of them. */
export interface ClaimReport {
  readonly machine: string;
  readonly claims: readonly JudgedClaim[];
  /** What of it is simulated or invented. */
  readonly origin: Origin;
}

/**
 * Compares every claim of a machine's sheet, except the price, with the registry's trials and measured statements:
 * held, not contradicted, not reached (by how much, with its interval), untested, or not reachable in principle.
 */
export function judgeClaims(
  registry: Registry,
  machineId: string,
  { today }: ClaimsOptions,
): Result<ClaimReport, UnknownProfile<'machine'>> {
  const machine = findProfile(registry, 'machine', machineId);
  if (!machine.ok) return machine;
  const context = { registry, today, reduce: reducingOnce(registry) };
  const claims = claimsOf(machine.value).map((claim) => ({ claim, ...judge(machine.value, claim, context) }));
  const trials = claims.flatMap(({ evidence }) => evidence.flatMap(({ trial }) => trial ?? []));
  return success({
    machine: machineId,
    claims,
    origin: originOf(registry, { profiles: [machine.value], trials }),
  });
}

function judge(machine: Profile<'machine'>, claim: Claim, context: EvidenceContext): ClaimVerdict {
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
      return judgeMeasured(claim, all) ?? untestedClaim('no trial has timed it');
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
      return judgeMeasured(claim, measured) ?? untestedClaim('no trial measures it');
  }
}
