import { smallestBead } from '../../knowledge/smallest-bead.ts';
import { flowAtSpeed } from '../../physics/bead.ts';
import { peakSpeedOfMove, runUpLength } from '../../physics/motion.ts';
import type { Machine } from '../../registry/generated/documents.ts';
import type { Profile } from '../../registry/profile.ts';
import { highestStated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import type { Claim } from './claim.ts';
import {
  type ClaimContext,
  type ClaimEvidence,
  type ClaimVerdict,
  notReachableClaim,
  untestedClaim,
} from './claim-verdict.ts';
import { claimedFlows, highestOf, withFeed } from './claimed-speed-feed.ts';
import { judgeMeasured } from './judge-measured.ts';

/** A claimed top speed against what was measured of it, against the way that the axes have, and against the melt. */
export function judgeSpeedClaim(
  machine: Profile<'machine'>,
  claim: Claim,
  measured: readonly ClaimEvidence[],
  context: ClaimContext,
): ClaimVerdict {
  const { value } = claim.statement;
  const judged = judgeMeasured(claim, measured, context.rule);
  if (judged !== null) return withFeed(judged, machine, value, context);
  const impossible = tooLongRunUp(machine.data, claim) ?? cannotBeFed(machine, claim);
  if (impossible !== null) return impossible;
  const text = `no trial has timed it${runUpText(machine.data, value)}`;
  return withFeed(untestedClaim(text), machine, value, context);
}

/** Half of the longest way over the bed: an axis runs up on one half and stops on the other. */
function halfWay({ envelope }: Machine): number {
  return Math.hypot(envelope.x, envelope.y) / 2;
}

function tooLongRunUp(machine: Machine, { statement: { value } }: Claim): ClaimVerdict | null {
  const acceleration = highestStated(machine.acceleration);
  const half = halfWay(machine);
  if (acceleration === null || acceleration <= 0 || runUpLength(value, acceleration) <= half) return null;
  return notReachableClaim(
    `it takes ${shown(runUpLength(value, acceleration), 'length')} to run up at ${shown(acceleration, 'acceleration')}, and half of the bed's diagonal is ${shown(half, 'length')}: that gives ${shown(peakSpeedOfMove(2 * half, acceleration), 'speed')} at most`,
  );
}

function cannotBeFed(machine: Profile<'machine'>, { statement: { value } }: Claim): ClaimVerdict | null {
  const flow = highestOf(claimedFlows(machine))?.value ?? null;
  const area = smallestBead(machine.data);
  if (flow === null || area === null || area <= 0 || flowAtSpeed(value, area) <= flow) return null;
  return notReachableClaim(
    `not while printing: the smallest usual bead would need ${shown(flowAtSpeed(value, area), 'volumeFlow')} at that speed, and the highest flow claimed is ${shown(flow, 'volumeFlow')}, which feeds ${shown(flow / area, 'speed')}`,
  );
}

function runUpText(machine: Machine, speed: number): string {
  const acceleration = highestStated(machine.acceleration);
  if (acceleration === null || acceleration <= 0) return '';
  return `; it can be reached: the run-up takes ${shown(runUpLength(speed, acceleration), 'length')} of the ${shown(halfWay(machine), 'length')} available`;
}
