import { speedAtFlow } from '../physics/bead.ts';
import { speedAtLayerTime } from '../physics/layer-time.ts';
import { peakSpeedOfMove } from '../physics/motion.ts';
import { type Basis, chooseStatement } from '../registry/statement.ts';
import type { MillimetresPerSecondSquared, SquareMillimetres } from '../units/canonical.ts';
import { type Feature, isPrinted } from './feature.ts';
import type { MeltLimit } from './melt-limit.ts';
import { conditionsOf, type Pairing } from './pairing.ts';
import type { Bound } from './speed-table.ts';

/** A value that a table uses, with what it rests on. */
export interface Grounded {
  readonly value: number;
  readonly basis: Basis;
}

/** What bounds the speed of a feature. Whatever is unknown does not bound. */
export function boundsOf(
  pairing: Pairing,
  feature: Feature,
  area: SquareMillimetres,
  melt: MeltLimit,
  acceleration: Grounded,
): Bound[] {
  const bounds = [machineBound(pairing), motionBound(pairing, feature, acceleration)];
  if (isPrinted(feature)) bounds.push(meltBound(pairing, area, melt), coolingBound(pairing));
  if (feature === 'outerContour') bounds.push(qualityBound(pairing));
  return bounds.filter((bound) => bound !== null);
}

/** Flow limit less the margin of the policy, through the cross-section of the bead. */
function meltBound({ policy }: Pairing, area: SquareMillimetres, melt: MeltLimit): Bound {
  const flow = melt.flow * (1 - policy.data.flowMargin);
  return { name: 'melt', speed: speedAtFlow(flow, area), basis: melt.basis };
}

function machineBound(pairing: Pairing): Bound | null {
  const speed = chooseStatement(pairing.machine.data.topSpeed, conditionsOf(pairing));
  return speed === null ? null : { name: 'machine', speed: speed.value, basis: speed.basis };
}

/** Peak that a stop-to-stop move over the typical segment of the feature reaches. */
function motionBound(
  { policy }: Pairing,
  feature: Feature,
  { value, basis }: { readonly value: MillimetresPerSecondSquared; readonly basis: Basis },
): Bound {
  return { name: 'motion', speed: peakSpeedOfMove(policy.data.typicalSegments[feature], value), basis };
}

/** The smallest layer that the policy serves must take the shortest layer time. */
function coolingBound(pairing: Pairing): Bound | null {
  const time = chooseStatement(pairing.filament.data.shortestLayerTime, conditionsOf(pairing));
  if (time === null) return null;
  const speed = speedAtLayerTime(pairing.policy.data.layerPath, time.value);
  return { name: 'cooling', speed, basis: time.basis };
}

/** The contour speed whose surface passes: of the filament on this machine, else of the machine. */
function qualityBound(pairing: Pairing): Bound | null {
  const conditions = conditionsOf(pairing);
  const speed =
    chooseStatement(pairing.filament.data.contourSpeed, conditions) ??
    chooseStatement(pairing.machine.data.contourSpeed, conditions);
  return speed === null ? null : { name: 'quality', speed: speed.value, basis: speed.basis };
}
