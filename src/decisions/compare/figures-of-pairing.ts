import { statedPauses } from '../../bench/reference-print/job-pauses.ts';
import { type Feature, features } from '../../knowledge/feature.ts';
import { isSimulated, originOf } from '../../knowledge/origin.ts';
import { conditionsOf, type Pairing } from '../../knowledge/pairing.ts';
import { quirksOf } from '../../knowledge/quirks.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { failure, type Result, success } from '../../result.ts';
import { boundsOf } from '../../tables/derive/bounds.ts';
import { resultTerm, sourcedValuesIn, type Term } from '../../tables/derive/calculation.ts';
import {
  type LimitsProblem,
  meltOf,
  type PairingLimits,
  pairingLimits,
} from '../../tables/derive/limits/pairing-limits.ts';
import { policyProblem, type UnusablePolicy } from '../../tables/derive/limits/usable-policy.ts';
import type { SourcedValue } from '../../tables/derive/sourced-value.ts';
import { accelerationOf } from '../../tables/derive/speed-row.ts';
import type { Bound } from '../../tables/derive/speed-table.ts';
import type { Known } from './job-estimate.ts';
import { modelCheckOf } from './model-check.ts';
import type { BoundFacts, ContourBound, PairingFigures, PathBound, PathFigures } from './pairing-figures.ts';

/** Why nothing is known of the speeds of a pairing. */
export type FiguresProblem = UnusablePolicy | LimitsProblem;

/**
 * What jobs on a pairing rest on, by its policy and at the one nozzle temperature that the policy chooses. The bounds leave
 * out motion and cooling: these are left to the time model, which knows the segments and layers of a job, where a table has to
 * assume typical ones.
 */
export function figuresOfPairing(
  registry: Registry,
  pairing: Pairing,
): Result<PairingFigures, FiguresProblem> {
  const { machine, nozzle, filament, policy } = pairing;
  const unusable = policyProblem(policy.id, policy.data);
  if (unusable !== null) return failure(unusable);
  const limits = pairingLimits(registry, pairing);
  if (!limits.ok) return limits;
  const conditions = conditionsOf(pairing);
  const stated = statedPauses(machine.data, filament.data, conditions);
  const topSpeed = chooseStatement(machine.data.topSpeed, conditions);
  const soundLevel = chooseStatement(machine.data.soundLevel, conditions);
  const modelCheck = modelCheckOf(registry, machine.id);
  const paths = pathsOf(registry, pairing, limits.value);
  const trials = [
    ...[topSpeed, soundLevel, ...Object.values(stated)].flatMap((statement) => statement?.evidence ?? []),
    ...(modelCheck?.trials ?? []),
  ];
  return success({
    ...{ machine: machine.id, nozzle: nozzle.id, filament: filament.id, policy: policy.id },
    bore: nozzle.diameter,
    speedStep: policy.data.rounding.speed,
    paths,
    pauses: {
      layerChange: knownValue(stated.layerChange, registry),
      travel: knownValue(stated.travel, registry),
      shortestLayerTime: knownValue(stated.shortestLayerTime, registry),
    },
    topSpeed: knownValue(topSpeed, registry),
    density: knownValue(chooseStatement(filament.data.density, conditions), registry),
    spoolMass: filament.data.spoolMass ?? null,
    spoolPrice: knownValue(chooseStatement(filament.data.price, conditions), registry),
    soundLevel: knownValue(soundLevel, registry),
    price: knownValue(chooseStatement(machine.data.price, conditions), registry),
    modelCheck,
    quirks: quirksOf(registry, pairing),
    trials,
    origin: originOf(registry, {
      profiles: [policy, machine, filament],
      trials: [...trials, ...Object.values(paths).flatMap(trialsOfPath)],
    }),
    inputs: [policy, machine, filament].map(({ kind, id, data, source }) => ({
      ...{ kind, id, version: data.version, digest: source.digest },
    })),
  });
}

function trialsOfPath({ bounds, contour }: PathFigures): string[] {
  return [...bounds, ...contour].flatMap(({ trials }) => trials);
}

function pathsOf(registry: Registry, pairing: Pairing, limits: PairingLimits): PairingFigures['paths'] {
  const of = (feature: Feature) => pathFigures(registry, pairing, limits, feature);
  return Object.fromEntries(features.map((feature) => [feature, of(feature)])) as PairingFigures['paths'];
}

/** The bead by which flows are told, in mm2: a speed over it is the flow. */
const unitArea: Term = {
  ...{ symbol: 'A', what: 'cross-section of the bead', value: 1, dimension: 'area', ground: null },
};

function pathFigures(
  registry: Registry,
  pairing: Pairing,
  limits: PairingLimits,
  feature: Feature,
): PathFigures {
  const acceleration = resultTerm(accelerationOf(pairing, limits, feature));
  const bounded = (contour: PairingLimits['contour']) =>
    boundsOf(pairing, { ...limits, contour }, { feature, layerHeight: 0, area: unitArea, acceleration });
  const { basis, ground } = limits.acceleration;
  const simulated = isAnySimulated(registry, trialsIn([ground]));
  return {
    acceleration: acceleration.value,
    accelerationBasis: { basis, of: 'acceleration', isSimulated: simulated },
    bounds: bounded([])
      .filter(({ name }) => name !== 'motion' && name !== 'cooling')
      .toSorted((one, other) => order.indexOf(one.name) - order.indexOf(other.name))
      .map((bound) => pathBound(registry, bound, limits, feature)),
    contour: limits.contour.flatMap((limit) =>
      bounded([limit])
        .filter(({ name, isOutright }) => name === 'quality' && !isOutright)
        .map((bound): ContourBound => {
          const { value, layerHeight, acceleration: at } = limit;
          const facts = boundFacts(registry, bound, trialsIn(sourcedValuesIn(bound)));
          return { ...facts, of: 'speed', most: bound.allowed, value, layerHeight, acceleration: at };
        }),
    ),
  };
}

/** The order in which equal bounds count. */
const order: readonly Bound['name'][] = ['machine', 'melt', 'traction', 'policy', 'quality'];

function pathBound(registry: Registry, bound: Bound, limits: PairingLimits, feature: Feature): PathBound {
  const shown = trialsIn(sourcedValuesIn(bound));
  const most = bound.allowed;
  if (bound.name === 'traction')
    return { ...boundFacts(registry, bound, shown), of: 'flow', most, interval: null };
  if (bound.name !== 'melt') return { ...boundFacts(registry, bound, shown), of: 'speed', most };
  const { interval, value, limits: behind } = meltOf(limits, feature);
  // The limit may be read off a line through those of several trials.
  const trials = [...new Set([...shown, ...trialsIn(behind.map(({ ground }) => ground))])];
  const shares = interval === null ? null : { low: interval.low / value, high: interval.high / value };
  return { ...boundFacts(registry, bound, trials), of: 'flow', most, interval: shares };
}

function boundFacts(registry: Registry, { name, basis }: Bound, trials: readonly string[]): BoundFacts {
  return { name, basis, isSimulated: isAnySimulated(registry, trials), trials };
}

function isAnySimulated(registry: Registry, trials: readonly string[]): boolean {
  return originOf(registry, { trials }).simulated.length > 0;
}

function trialsIn(sourcedValues: readonly SourcedValue[]): string[] {
  return [...new Set(sourcedValues.flatMap(({ evidence }) => evidence ?? []))];
}

/** What a statement says, with its basis; null where nothing is stated. */
function knownValue<Value>(statement: Statement<Value> | null, registry: Registry): Known<Value> | null {
  if (statement === null) return null;
  const { value, basis } = statement;
  return { value, basis, isSimulated: isSimulated(statement, registry) };
}
