import type { ReduceById } from '../bench/reducing-once.ts';
import { fastestFeed } from '../knowledge/filament-diameters.ts';
import { leastHeat } from '../knowledge/melt-heat.ts';
import type { FittedPairing } from '../knowledge/pairing.ts';
import { tractionOf } from '../knowledge/traction.ts';
import { flowOfFeed } from '../physics/filament-geometry.ts';
import type { Registry } from '../registry/registry.ts';
import { highestStated } from '../registry/stated.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import type { CubicMillimetresPerSecond, Range } from '../units/canonical.ts';
import { rounded } from '../units/rounded.ts';
import { shown } from '../units/wording.ts';
import { meltCapacity } from './melt-capacity.ts';
import type { MeltSetup } from './melt-setup.ts';
import type { Estimate, FlowCap, Prediction } from './prediction.ts';
import { type SiblingTrial, siblingTrials } from './sibling-trials.ts';
import { statedFlow } from './stated-flow.ts';

/** Ladders reach what conduction gives within this factor (common practice, no source). */
const conductedSpread = 2;
/** A ladder that ended before its limit says only that the limit is higher: by up to this factor (common practice, no source). */
const beyondLowerBound = 1.5;

/**
 * The flow limit that a pairing is expected to have at a nozzle temperature, with the range that it is thought to lie in:
 * from the nearest trials, else from the flow that is stated for the hot end, else from conduction alone; never above what
 * heater and drive allow.
 */
export function predictLimit(
  registry: Registry,
  pairing: FittedPairing,
  setup: MeltSetup,
  reduce: ReduceById,
): Result<Prediction, Problem<'nothingKnown'>> {
  const siblings = siblingTrials(registry, pairing, setup, reduce);
  const caps = capsOf(pairing, setup);
  const length = highestStated(pairing.hotEnd.meltZoneLength);
  const capacity = length === null ? null : meltCapacity(setup.families, setup.nozzleTemperature, length);
  const stated = statedFlow(registry, pairing, setup);
  const best =
    fromTrials(siblings) ??
    (stated && { from: 'stated' as const, trials: [], ...around(stated.scaled, stated.spread) }) ??
    (capacity && {
      from: 'conduction' as const,
      trials: [],
      ...around(capacity.flow, conductedSpread),
    });
  if (best === null) return nothingKnown(pairing);
  return success({
    ...capped(raised(best, siblings), caps),
    siblings,
    stated,
    capacity: capacity && length !== null ? { ...capacity, meltZoneLength: length } : null,
    caps,
  });
}

function around(value: CubicMillimetresPerSecond, spread: number): { value: number; range: Range } {
  return { value, range: { low: value / spread, high: value * spread } };
}

/** The trials of the nearest kinship that saw the limit: their geometric mean, and a range that holds them all. */
function fromTrials(siblings: readonly SiblingTrial[]): Estimate | null {
  const bracketed = siblings.filter(({ limit }) => limit.censored === null);
  const nearest = bracketed.filter(({ kinship }) => kinship === bracketed[0]?.kinship);
  const [first] = nearest;
  if (first === undefined) return null;
  const logs = nearest.map(({ scaled }) => Math.log(scaled));
  const value = Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length);
  const scaled = nearest.map((trial) => trial.scaled);
  return {
    from: 'trials',
    trials: nearest.map(({ id }) => id),
    value,
    range: {
      low: Math.min(value / first.spread, ...scaled),
      high: Math.max(value * first.spread, ...scaled),
    },
  };
}

/** A lower bound from the same machine and filament lifts what lies below it. */
function raised(estimate: Estimate, siblings: readonly SiblingTrial[]): Estimate {
  const bounds = siblings.filter(
    ({ limit, kinship }) =>
      limit.censored === 'above' && (kinship === 'samePairing' || kinship === 'otherNozzle'),
  );
  const low = Math.max(estimate.range.low, ...bounds.map(({ scaled, spread }) => scaled / spread));
  if (low === estimate.range.low) return estimate;
  const value = Math.max(estimate.value, low * Math.sqrt(beyondLowerBound));
  return { ...estimate, value, range: { low, high: Math.max(estimate.range.high, low * beyondLowerBound) } };
}

function capsOf(pairing: FittedPairing, setup: MeltSetup): FlowCap[] {
  const { filament, hotEnd } = pairing;
  const power = highestStated(hotEnd.heaterPower);
  const heat = leastHeat(setup);
  const drive: FlowCap = {
    by: 'drive',
    flow: flowOfFeed(fastestFeed, filament.data.diameter),
    text: `the drive loses its grip on the filament near ${fastestFeed} mm/s`,
  };
  const others = [drive, ...tractionCap(pairing, setup)];
  if (power === null || power <= 0) return others;
  const heater: FlowCap = {
    by: 'heater',
    flow: power / heat.perVolume,
    text: `the ${power} W heater cannot melt more (assumed: ${heat.assumptions})`,
  };
  return [heater, ...others];
}

/** What a stated drive force pushes through the nozzle at most; nothing where none is stated. */
function tractionCap({ filament, hotEnd, nozzle }: FittedPairing, setup: MeltSetup): FlowCap[] {
  const force = highestStated(hotEnd.driveForce);
  if (force === null) return [];
  const traction = tractionOf({
    force,
    filament: filament.data,
    families: setup.families,
    nozzleDiameter: nozzle.diameter,
    nozzleTemperature: setup.nozzleTemperature,
    meltZoneLength: highestStated(hotEnd.meltZoneLength),
  });
  if (traction === null) return [];
  const { flow, pressure, isStrandWeaker, meanTemperature, assumptions } = traction;
  const pushed = isStrandWeaker
    ? `of the ${shown(force, 'force')} of the drive the strand bears ${shown(pressure, 'pressure')}`
    : `the drive pushes ${shown(force, 'force')}, which is ${shown(pressure, 'pressure')} in the strand`;
  const leaves = `the melt leaves at ${shown(rounded(meanTemperature, 3), 'temperature')} on average`;
  return [{ by: 'traction', flow, text: `${pushed}, and ${leaves} (assumed: ${assumptions})` }];
}

function capped(
  estimate: Estimate,
  caps: readonly FlowCap[],
): Estimate & { readonly cappedBy: FlowCap | null } {
  const lowest = caps.reduce<FlowCap | null>((a, b) => (a === null || b.flow < a.flow ? b : a), null);
  if (lowest === null || estimate.range.high <= lowest.flow) return { ...estimate, cappedBy: null };
  const within = (flow: number) => Math.min(flow, lowest.flow);
  const { low, high } = estimate.range;
  return {
    ...estimate,
    value: within(estimate.value),
    range: { low: within(low), high: within(high) },
    cappedBy: estimate.value > lowest.flow ? lowest : null,
  };
}

function nothingKnown({ machine, hotEnd, filament }: FittedPairing) {
  return refusal(
    'nothingKnown',
    `The flow of ${filament.id} on ${machine.id} cannot be estimated`,
    `State the melt zone length or a claimed flow of hot end "${hotEnd.id}" in machines/${machine.id}.yaml, or add a trial of the family.`,
  );
}
