import { type Feature, isPrinted } from '../../knowledge/feature.ts';
import type { Pairing } from '../../knowledge/pairing.ts';
import { beadArea, flowAtSpeed } from '../../physics/bead.ts';
import { runUpLength } from '../../physics/motion.ts';
import { labelAt } from '../../registry/facts-of-key.ts';
import type { Dimension } from '../../units/dimension.ts';
import { roundDown, roundUp } from '../../units/round-to-step.ts';
import type { Bead } from './beads.ts';
import { boundsOf, type RowFrame } from './bounds.ts';
import { type Calculation, resultTerm, sourcedTerm, type Term } from './calculation.ts';
import { fanOf } from './fan-setting.ts';
import { meltOf, type PairingLimits } from './limits/pairing-limits.ts';
import { usableValue } from './limits/usable-limit.ts';
import { type SourcedValue, sourcedQuantity } from './sourced-value.ts';
import type { Bound, SpeedRow } from './speed-table.ts';

/** A row before the sourcedValues that it rests on are judged; null where nothing bounds the feature. */
export type BareRow = Omit<SpeedRow, 'flags' | 'quirks'>;

/** The row of a feature and a bead: the least of its bounds times the fraction of the policy, to the safe side. */
export function speedRow(
  pairing: Pairing,
  limits: PairingLimits,
  feature: Feature,
  bead: Bead,
): BareRow | null {
  const area = areaOf(bead);
  const acceleration = accelerationOf(pairing, limits, feature);
  const { layerHeight, lineWidth } = bead;
  const frame: RowFrame = {
    feature,
    layerHeight,
    area: resultTerm(area),
    acceleration: resultTerm(acceleration),
  };
  const bounds = boundsOf(pairing, limits, frame);
  const [binding, next] = bounds;
  if (binding === undefined) return null;
  const melt = isPrinted(feature) ? meltOf(limits, feature) : limits.print;
  const speed = speedOf(pairing, feature, binding);
  const flow = isPrinted(feature) ? flowOf(pairing, speed, area) : null;
  const runUp = runUpOf(pairing, speed, acceleration);
  return {
    feature,
    layerHeight,
    lineWidth,
    speed: resultTerm(speed).value,
    flow: flow === null ? 0 : resultTerm(flow).value,
    acceleration: resultTerm(acceleration).value,
    bound: binding.name,
    nozzleTemperature: melt.nozzleTemperature,
    fan: fanOf(pairing, feature),
    runUp: resultTerm(runUp).value,
    basis: binding.basis,
    bounds,
    runnerUp: next === undefined ? null : { name: next.name, slack: next.allowed / binding.allowed - 1 },
    sizes: [
      ...[bead.heightFrom, bead.widthFrom, area, acceleration],
      ...(melt.line === null || !isPrinted(feature) ? [] : [melt.line]),
    ],
    results: [speed, ...(flow === null ? [] : [flow]), runUp],
  };
}

function areaOf({ layerHeight, lineWidth, heightFrom, widthFrom }: Bead): Calculation {
  return {
    ...unrounded('A', 'cross-section of the bead', 'area', beadArea(layerHeight, lineWidth)),
    formula: 'h * (w - h) + pi * h^2 / 4',
    terms: [resultTerm(heightFrom), resultTerm(widthFrom)],
  };
}

/** The acceleration of a feature: the share of the machine's that the policy sets, at most its cap, in mm/s2, rounded down. */
export function accelerationOf(
  { policy }: Pairing,
  { acceleration }: PairingLimits,
  feature: Feature,
): Calculation {
  const fraction = policy.data.accelerationFractions[feature];
  const path = ['accelerationFractions', feature];
  const share = sourcedQuantity(policy, path, fraction, `${labelAt('policy', path)} for ${feature}`);
  const { ground, value, cap } = acceleration;
  const most = accelerationCap(policy, feature);
  const ofMachine = cap === null ? 'a0 * f' : 'a0 * c * f';
  const exact = Math.min(usableValue(acceleration) * fraction, most?.value ?? Number.POSITIVE_INFINITY);
  return {
    ...unrounded('a', 'acceleration of the row', 'acceleration', exact),
    formula: most === null ? ofMachine : `min(${ofMachine}, h)`,
    terms: [
      sourcedTerm('a0', ground, value),
      ...(cap === null ? [] : [sourcedTerm('c', cap.ground, cap.share)]),
      sourcedTerm('f', share, fraction),
      ...(most === null ? [] : [most]),
    ],
    rounded: down(stepOf({ policy }, 'acceleration'), exact),
  };
}

/** The outright cap of the policy on the acceleration of a feature. */
function accelerationCap(policy: Pairing['policy'], feature: Feature): Term | null {
  const most = policy.data.caps?.[feature]?.acceleration;
  if (most === undefined) return null;
  const path = ['caps', feature, 'acceleration'];
  return sourcedTerm(
    'h',
    sourcedQuantity(policy, path, most, `${labelAt('policy', path)} of ${feature}`),
    most,
  );
}

function speedOf(pairing: Pairing, feature: Feature, binding: Bound): Calculation {
  if (binding.isOutright) return outrightSpeed(pairing, binding);
  const fraction = pairing.policy.data.fractions[feature];
  const path = ['fractions', feature];
  const share = sourcedQuantity(pairing.policy, path, fraction, `${labelAt('policy', path)} for ${feature}`);
  const exact = binding.speed * fraction;
  const least: Term = { ...resultTerm(binding), symbol: 'v1', what: `least bound: ${binding.name}` };
  return {
    ...unrounded('v', 'speed of the row', 'speed', exact),
    formula: 'v1 * f',
    terms: [least, sourcedTerm('f', share, fraction)],
    rounded: down(stepOf(pairing, 'speed'), exact),
  };
}

/** A cap, or a speed up to which the feature was found to hold, is used whole. */
function outrightSpeed(pairing: Pairing, binding: Bound): Calculation {
  return {
    ...unrounded('v', 'speed of the row', 'speed', binding.speed),
    formula: 'v1',
    terms: [{ ...resultTerm(binding), symbol: 'v1', what: `least bound: ${binding.name}` }],
    rounded: down(stepOf(pairing, 'speed'), binding.speed),
  };
}

function flowOf(pairing: Pairing, speed: Calculation, area: Calculation): Calculation {
  const exact = flowAtSpeed(resultTerm(speed).value, area.exact);
  return {
    ...unrounded('q', 'flow of the row', 'volumeFlow', exact),
    formula: 'v * A',
    terms: [resultTerm(speed), resultTerm(area)],
    rounded: down(stepOf(pairing, 'flow'), exact),
  };
}

function runUpOf(pairing: Pairing, speed: Calculation, acceleration: Calculation): Calculation {
  const exact = runUpLength(resultTerm(speed).value, resultTerm(acceleration).value);
  const step = stepOf(pairing, 'runUp');
  return {
    ...unrounded('s', 'run-up from a stop', 'length', exact),
    formula: 'v^2 / (2 * a)',
    terms: [resultTerm(speed), resultTerm(acceleration)],
    rounded: { direction: 'up', step: step.ground, value: roundUp(exact, step.size) },
  };
}

interface Step {
  readonly size: number;
  readonly ground: SourcedValue;
}

function stepOf(
  { policy }: Pick<Pairing, 'policy'>,
  name: 'speed' | 'flow' | 'acceleration' | 'runUp',
): Step {
  const size = policy.data.rounding[name];
  return { size, ground: sourcedQuantity(policy, ['rounding', name], size, 'step') };
}

function down({ size, ground }: Step, exact: number): Calculation['rounded'] {
  return { direction: 'down', step: ground, value: roundDown(exact, size) };
}

function unrounded(symbol: string, what: string, dimension: Dimension, exact: number) {
  return { symbol, what, dimension, exact, rounded: null };
}
