import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import { basisWords } from '../../knowledge/origin.ts';
import { smallestBead } from '../../knowledge/smallest-bead.ts';
import { flowAtSpeed, speedAtFlow } from '../../physics/bead.ts';
import type { Profile } from '../../registry/profile.ts';
import type {
  CubicMillimetresPerSecond,
  MillimetresPerSecond,
  SquareMillimetres,
} from '../../units/canonical.ts';
import { rounded } from '../../units/rounded.ts';
import { shown } from '../../units/wording.ts';
import { evidenceFrom, trialsOf } from './claim-evidence.ts';
import type { ClaimVerdict } from './claim-verdict.ts';

/** The highest flow that is known of a machine. */
interface HighestFlow {
  readonly value: CubicMillimetresPerSecond;
  /** `measured`, `measured (simulated)` or `claimed`. */
  readonly basis: string;
}

/** The verdict on a claimed speed with the flow that printing at it takes, against the highest that is known. */
export function withFeed(
  verdict: ClaimVerdict,
  machine: Profile<'machine'>,
  speed: MillimetresPerSecond,
  context: EvidenceContext,
): ClaimVerdict {
  const area = smallestBead(machine.data);
  if (area === null || area <= 0) return verdict;
  return { ...verdict, text: `${verdict.text}; ${feedText(speed, area, highestFlow(machine, context))}` };
}

function feedText(speed: MillimetresPerSecond, area: SquareMillimetres, highest: HighestFlow | null): string {
  const needed = flowAtSpeed(speed, area);
  const start = `printing the smallest usual bead at that speed takes ${shown(needed, 'volumeFlow')}`;
  if (highest === null) return `${start}, and no flow is known`;
  const known = `${start}, and the highest flow ${highest.basis} is ${shown(rounded(highest.value, 3), 'volumeFlow')}`;
  return needed <= highest.value
    ? known
    : `${known}, which feeds ${shown(speedAtFlow(highest.value, area), 'speed')}`;
}

/** What ladders have shown counts; what a sheet claims only where none was run. */
function highestFlow(machine: Profile<'machine'>, context: EvidenceContext): HighestFlow | null {
  const measured = trialsOf(context.registry, machine.id, null).flatMap((trial) => {
    const found = evidenceFrom(trial, 'meltFlow', context);
    return found === null || found.censored === 'below'
      ? []
      : [{ value: found.value, basis: basisWords(found.how, found.simulated) }];
  });
  return highestOf(measured) ?? highestOf(claimedFlows(machine));
}

/** The flows that the sheet of a machine claims. */
export function claimedFlows({ data }: Profile<'machine'>): HighestFlow[] {
  return data.hotEnds.flatMap(({ meltFlow = [] }) =>
    meltFlow.flatMap(({ basis, value }) => (basis === 'claimed' ? [{ value, basis }] : [])),
  );
}

export function highestOf(flows: readonly HighestFlow[]): HighestFlow | null {
  return flows.toSorted((a, b) => b.value - a.value)[0] ?? null;
}
