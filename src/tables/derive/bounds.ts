import { type Feature, isPrinted } from '../../knowledge/feature.ts';
import type { Pairing } from '../../knowledge/pairing.ts';
import { speedAtFlow } from '../../physics/bead.ts';
import { peakSpeedOfMove, speedAtLayerTime } from '../../physics/motion.ts';
import { labelAt } from '../../registry/facts-of-key.ts';
import type { Basis } from '../../registry/statement.ts';
import type { Millimetres } from '../../units/canonical.ts';
import { sourcedTerm, type Term } from './calculation.ts';
import { contourFor } from './contour-limit.ts';
import { type PairingLimits, usableValue } from './pairing-limits.ts';
import { sourcedQuantity } from './sourced-value.ts';
import type { Bound, BoundName } from './speed-table.ts';
import type { UsableLimit } from './usable-limit.ts';

/** What a row is before its speed is known. */
export interface RowFrame {
  readonly feature: Feature;
  readonly layerHeight: Millimetres;
  /** Cross-section of the bead, in mm2. */
  readonly area: Term;
  /** In mm/s2, rounded. */
  readonly acceleration: Term;
}

/** What bounds the speed of a feature, the least first. Whatever is unknown does not bound. */
export function boundsOf(pairing: Pairing, limits: PairingLimits, frame: RowFrame): Bound[] {
  const bounds = [machineBound(limits), motionBound(pairing, limits, frame)];
  if (isPrinted(frame.feature)) {
    bounds.push(meltBound(pairing, limits, frame), coolingBound(pairing, limits));
  }
  if (frame.feature === 'outerContour') bounds.push(qualityBound(limits, frame));
  return bounds.filter((bound) => bound !== null).sort((a, b) => a.speed - b.speed);
}

/** Flow limit less the margin of the policy, through the cross-section of the bead. */
function meltBound({ policy }: Pairing, { largestMelt }: PairingLimits, { area }: RowFrame): Bound {
  const { flowMargin } = policy.data;
  const margin = sourcedQuantity(policy, ['flowMargin'], flowMargin);
  const flow = used('Q', largestMelt);
  const speed = speedAtFlow(usableValue(largestMelt) * (1 - flowMargin), area.value);
  return bound('melt', speed, largestMelt.basis, `${flow.formula} * (1 - m) / A`, [
    ...flow.terms,
    sourcedTerm('m', margin, flowMargin),
    area,
  ]);
}

function machineBound({ topSpeed }: PairingLimits): Bound | null {
  if (topSpeed === null) return null;
  const { formula, terms } = used('v0', topSpeed);
  return bound('machine', usableValue(topSpeed), topSpeed.basis, formula, terms);
}

/** Peak that a stop-to-stop move over the typical segment of the feature reaches. */
function motionBound({ policy }: Pairing, limits: PairingLimits, { feature, acceleration }: RowFrame): Bound {
  const length = policy.data.typicalSegments[feature];
  const path = ['typicalSegments', feature];
  const segment = sourcedQuantity(policy, path, length, `${labelAt('policy', path)} of ${feature}`);
  const a = { ...acceleration, ground: limits.acceleration.ground };
  const speed = peakSpeedOfMove(length, a.value);
  return bound('motion', speed, limits.acceleration.basis, 'sqrt(a * L)', [
    a,
    sourcedTerm('L', segment, length),
  ]);
}

/** The smallest layer that the policy serves must take the shortest layer time. */
function coolingBound({ policy }: Pairing, { layerTime }: PairingLimits): Bound | null {
  if (layerTime === null) return null;
  const { layerPath } = policy.data;
  const path = sourcedQuantity(policy, ['layerPath'], layerPath);
  const { formula, terms } = used('t', layerTime);
  // A time is capped by making it longer.
  const seconds = layerTime.value / (layerTime.cap?.share ?? 1);
  const divisor = layerTime.cap === null ? formula : '(t / c)';
  const all = [sourcedTerm('L', path, layerPath), ...terms];
  return bound('cooling', speedAtLayerTime(layerPath, seconds), layerTime.basis, `L / ${divisor}`, all);
}

/** The contour speed whose surface passes: of the filament on this machine, else of the machine. */
function qualityBound({ contour }: PairingLimits, { layerHeight, acceleration }: RowFrame): Bound | null {
  const chosen = contourFor(contour, layerHeight, acceleration.value);
  if (chosen === null) return null;
  const { formula, terms } = used('v0', chosen.limit);
  return bound('quality', usableValue(chosen.limit), chosen.limit.basis, formula, terms);
}

/** A limit in a formula: by itself, or times the share of it that the policy lets tables use. */
function used(symbol: string, { ground, value, cap }: UsableLimit): { formula: string; terms: Term[] } {
  const term = sourcedTerm(symbol, ground, value);
  return cap === null
    ? { formula: symbol, terms: [term] }
    : { formula: `${symbol} * c`, terms: [term, sourcedTerm('c', cap.ground, cap.share)] };
}

function bound(name: BoundName, speed: number, basis: Basis, formula: string, terms: readonly Term[]): Bound {
  const calculation = {
    symbol: 'v',
    what: `speed that ${allows[name]}`,
    dimension: 'speed',
    rounded: null,
  } as const;
  return { ...calculation, name, speed, exact: speed, basis, formula, terms };
}

const allows: Readonly<Record<BoundName, string>> = {
  melt: 'the melt limit feeds',
  motion: 'a move over the typical segment reaches',
  cooling: 'leaves the smallest layer its shortest time',
  machine: 'the machine can go',
  quality: 'still gives a surface that passes',
};
