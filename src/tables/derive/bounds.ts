import { type Feature, isPrinted } from '../../knowledge/feature.ts';
import { conditionsOf, type Pairing } from '../../knowledge/pairing.ts';
import { speedAtFlow } from '../../physics/bead.ts';
import { peakSpeedOfMove, speedAtLayerTime } from '../../physics/motion.ts';
import { labelAt } from '../../registry/facts-of-key.ts';
import type { Filament } from '../../registry/generated/documents.ts';
import { type Basis, chooseLimit } from '../../registry/statement.ts';
import type { Fraction, Millimetres } from '../../units/canonical.ts';
import { sourcedTerm, type Term } from './calculation.ts';
import { contourFor } from './limits/contour-limit.ts';
import { meltOf, type PairingLimits, tractionFor } from './limits/pairing-limits.ts';
import { type UsableLimit, usableValue } from './limits/usable-limit.ts';
import { sourcedQuantity, sourcedStatement } from './sourced-value.ts';
import type { Bound, BoundName } from './speed-table.ts';

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
  const share = pairing.policy.data.fractions[frame.feature];
  const bounds = [machineBound(limits), motionBound(pairing, limits, frame)];
  if (isPrinted(frame.feature)) {
    bounds.push(meltBound(pairing, limits, frame), tractionBound(pairing, limits, frame));
    bounds.push(coolingBound(pairing, limits));
  }
  if (frame.feature === 'outerContour') bounds.push(qualityBound(limits, frame));
  return [
    ...bounds.filter((each) => each !== null).map((each) => shared(each, share)),
    ...policyBound(pairing, frame),
    ...holdingBound(pairing, frame),
  ].sort((a, b) => a.allowed - b.allowed);
}

function shared(bound: WholeBound, share: Fraction): Bound {
  return { ...bound, isOutright: false, share, allowed: bound.speed * share };
}

function outright(bound: WholeBound): Bound {
  return { ...bound, isOutright: true, share: 1, allowed: bound.speed };
}

/** The outright cap of the policy on the speed of a feature. */
function policyBound({ policy }: Pairing, { feature }: RowFrame): Bound[] {
  const speed = policy.data.caps?.[feature]?.speed;
  if (speed === undefined) return [];
  const path = ['caps', feature, 'speed'];
  const cap = sourcedQuantity(policy, path, speed, `${labelAt('policy', path)} of ${feature}`);
  return [outright(bound('policy', speed, null, 'c', [sourcedTerm('c', cap, speed)]))];
}

/** Speeds of a filament up to which the bench found that a feature holds. */
const holdingSpeeds = {
  firstLayer: 'stickingSpeed',
  bridge: 'bridgeSpeed',
  overhang: 'overhangSpeed',
} as const satisfies Partial<Record<Feature, keyof Filament>>;

function holdingSpeedOf(feature: Feature): (typeof holdingSpeeds)[keyof typeof holdingSpeeds] | null {
  return feature === 'firstLayer' || feature === 'bridge' || feature === 'overhang'
    ? holdingSpeeds[feature]
    : null;
}

/** The speed up to which a first layer sticks, a bridge does not sag or an overhang does not curl; used whole. */
function holdingBound(pairing: Pairing, { feature }: RowFrame): Bound[] {
  const key = holdingSpeedOf(feature);
  if (key === null) return [];
  const stated = chooseLimit(pairing.filament.data[key], conditionsOf(pairing), 'below');
  if (stated === null) return [];
  const term = sourcedTerm('v0', sourcedStatement(pairing.filament, stated), stated.value);
  return [outright(bound('quality', stated.value, stated.basis, 'v0', [term]))];
}

/** Flow limit less the margin of the policy, through the cross-section of the bead. */
function meltBound({ policy }: Pairing, limits: PairingLimits, { feature, area }: RowFrame): WholeBound {
  const { flowMargin } = policy.data;
  const margin = sourcedQuantity(policy, ['flowMargin'], flowMargin);
  const melt = meltOf(limits, feature);
  const flow = capped(melt.term, melt.cap);
  const speed = speedAtFlow(usableValue(melt) * (1 - flowMargin), area.value);
  return bound('melt', speed, melt.basis, `${flow.formula} * (1 - m) / A`, [
    ...flow.terms,
    sourcedTerm('m', margin, flowMargin),
    area,
  ]);
}

/** The flow that the drive pushes through the nozzle, less the margin of the policy, through the cross-section of the bead. */
function tractionBound(
  { policy }: Pairing,
  limits: PairingLimits,
  { feature, area }: RowFrame,
): WholeBound | null {
  const traction = tractionFor(limits, feature);
  if (traction === null) return null;
  const { flowMargin } = policy.data;
  const margin = sourcedQuantity(policy, ['flowMargin'], flowMargin);
  const speed = speedAtFlow(traction.flow * (1 - flowMargin), area.value);
  const terms = [...traction.terms, sourcedTerm('m', margin, flowMargin), area];
  const pushed = bound('traction', speed, traction.basis, `${traction.formula} * (1 - m) / A`, terms);
  return { ...pushed, fittedTo: traction.fittedTo };
}

function machineBound({ topSpeed }: PairingLimits): WholeBound | null {
  if (topSpeed === null) return null;
  const { formula, terms } = used('v0', topSpeed);
  return bound('machine', usableValue(topSpeed), topSpeed.basis, formula, terms);
}

/** Peak that a stop-to-stop move over the typical segment of the feature reaches. */
function motionBound(
  { policy }: Pairing,
  limits: PairingLimits,
  { feature, acceleration }: RowFrame,
): WholeBound {
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
function coolingBound({ policy }: Pairing, { layerTime }: PairingLimits): WholeBound | null {
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
function qualityBound(
  { contour }: PairingLimits,
  { layerHeight, acceleration }: RowFrame,
): WholeBound | null {
  const chosen = contourFor(contour, layerHeight, acceleration.value);
  if (chosen === null) return null;
  const { formula, terms } = used('v0', chosen.limit);
  return bound('quality', usableValue(chosen.limit), chosen.limit.basis, formula, terms);
}

/** A limit in a formula: by itself, or times the share of it that the policy lets tables use. */
function used(symbol: string, { ground, value, cap }: UsableLimit): { formula: string; terms: Term[] } {
  return capped(sourcedTerm(symbol, ground, value), cap);
}

function capped(term: Term, cap: UsableLimit['cap']): { formula: string; terms: Term[] } {
  return cap === null
    ? { formula: term.symbol, terms: [term] }
    : { formula: `${term.symbol} * c`, terms: [term, sourcedTerm('c', cap.ground, cap.share)] };
}

/** A bound before the share of the feature. */
type WholeBound = Omit<Bound, 'isOutright' | 'share' | 'allowed'>;

function bound(
  name: BoundName,
  speed: number,
  basis: Basis | null,
  formula: string,
  terms: readonly Term[],
): WholeBound {
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
  traction: 'the drive pushes through the nozzle',
  motion: 'a move over the typical segment reaches',
  cooling: 'leaves the smallest layer its shortest time',
  machine: 'the machine can go',
  quality: 'still gives a surface that passes',
  policy: 'the house allows outright',
};
