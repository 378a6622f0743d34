import { type ReduceById, reducingOnce } from '../../bench/reducing-once.ts';
import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Result, success } from '../../result.ts';
import { type Claim, claimsOf } from './claim.ts';
import { measuredBeside, trialsOf } from './claim-evidence.ts';
import type { ClaimVerdict, JudgedClaim } from './claim-verdict.ts';
import { judgeFlowClaim } from './judge-flow-claim.ts';
import { judgeMeasured } from './judge-measured.ts';
import {
  judgeContourClaim,
  judgeHeaterClaim,
  judgeSettingClaim,
  judgeSoundClaim,
  untestedClaim,
} from './judge-other-claims.ts';
import { judgeSpeedClaim } from './judge-speed-claim.ts';

/** The claims of a machine with what has become of them. */
export interface ClaimReport {
  readonly machine: string;
  readonly claims: readonly JudgedClaim[];
}

/**
 * Holds every claim of a machine's sheet, but the price, against what the registry's trials and measured statements say:
 * held, not reached (by how much, with its interval), untested, or not reachable in principle.
 */
export function judgeClaims(
  registry: Registry,
  machineId: string,
): Result<ClaimReport, UnknownProfile<'machine'>> {
  const machine = findProfile(registry, 'machine', machineId);
  if (!machine.ok) return machine;
  const reduce = reducingOnce(registry);
  return success({
    machine: machineId,
    claims: claimsOf(machine.value).map((claim) => ({
      claim,
      ...judge(registry, machine.value, claim, reduce),
    })),
  });
}

function judge(
  registry: Registry,
  machine: Profile<'machine'>,
  claim: Claim,
  reduce: ReduceById,
): ClaimVerdict {
  const measured = measuredBeside(claim, registry);
  const trials = trialsOf(registry, machine.id, claim.hotEnd);
  switch (claim.property) {
    case 'meltFlow':
      return judgeFlowClaim(registry, machine.id, claim, reduce);
    case 'topSpeed':
      return judgeSpeedClaim(machine.data, claim, measured);
    case 'contourSpeed':
      return judgeContourClaim(claim, trials, measured, reduce);
    case 'soundLevel':
      return judgeSoundClaim(claim, trials, measured, reduce);
    case 'heaterPower':
      return judgeHeaterClaim(registry, claim, trials, reduce);
    default:
      if (claim.limits !== null) return judgeSettingClaim(claim, claim.limits, trials, measured);
      return judgeMeasured(claim, measured) ?? untestedClaim('no trial measures it');
  }
}
