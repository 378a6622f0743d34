import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import { nozzleIds } from '../../registry/nozzle.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { failure, type Problem, type Result, success } from '../../result.ts';
import { unknownWord } from '../../text/unknown-word.ts';
import { finds, resultOf } from '../methods.ts';
import { reduceTrial } from '../reduce-trial.ts';
import type { Censoring } from '../reduction.ts';
import { type CombinedLimit, combinedLimits } from './combined-limits.ts';
import { fitLimitLine, type LimitLine, type LimitPoint } from './limit-line.ts';

/** What is asked for: a filament on a machine, by their ids. */
export interface PairingTrialsRequest {
  readonly machine: string;
  readonly filament: string;
  /** Id of the nozzle; by default the one whose ladders ran at most temperatures. */
  readonly nozzle?: string;
}

/** The limit of a trial of the pairing. */
interface TrialLimit extends LimitPoint {
  readonly trial: string;
}

/** A trial whose ladder does not bracket the limit. */
export interface TrialBound {
  readonly trial: string;
  /** Nozzle temperature, °C. */
  readonly temperature: number;
  /** mm3/s; the limit is above or below it. */
  readonly bound: number;
  readonly censored: Censoring;
}

/** What the flow ladders of a filament on a nozzle of a machine say of the limit against the nozzle temperature. */
export interface PairingReduction {
  readonly machine: string;
  readonly filament: string;
  readonly nozzle: string;
  /** Other nozzles of the machine with flow ladders of the filament. */
  readonly otherNozzles: readonly string[];
  /** Where the readings come from. */
  readonly origin: 'bench' | 'simulated' | 'mixed';
  /** The accepted flow deficit that the limits share, as a fraction; null where no ladder can be reduced. */
  readonly acceptedDeficit: number | null;
  /** Coldest first. */
  readonly limits: readonly TrialLimit[];
  /** Lower and upper bounds: they cannot enter a least-squares fit. */
  readonly bounds: readonly TrialBound[];
  /** Trials that do not count, with the reason. */
  readonly leftOut: readonly { readonly trial: string; readonly reason: string }[];
  /** One limit a temperature, coldest first. */
  readonly temperatures: readonly CombinedLimit[];
  /** Null with fewer than two temperatures. */
  readonly line: LimitLine | null;
}

/** There is nothing to reduce on the nozzle. */
export interface NoLadders extends Problem<'noLadders'> {
  /** Nozzles of the machine with ladders of the filament. */
  readonly nozzlesWithLadders: readonly string[];
}

/** Why the ladders of a pairing cannot be gathered. */
export type PairingTrialsProblem =
  | UnknownProfile<'machine' | 'filament'>
  | Problem<'unknownNozzle'>
  | NoLadders;

/** Gathers and reduces the flow ladders of a pairing and fits their limits against the nozzle temperature. */
export function reducePairing(
  registry: Registry,
  request: PairingTrialsRequest,
): Result<PairingReduction, PairingTrialsProblem> {
  const unknown = unknownName(registry, request);
  if (unknown !== null) return failure(unknown);
  const { machine, filament, nozzle: asked } = request;
  const ladders = [...registry.trial.values()].filter(
    ({ data }) => finds(data.method, 'meltFlow') && data.machine === machine && data.filament === filament,
  );
  const nozzles = nozzlesByTemperatures(ladders);
  const nozzle = asked ?? nozzles[0];
  const chosen = ladders.filter(({ data }) => data.nozzle === nozzle);
  if (nozzle === undefined || chosen.length === 0) return failure(noLadders(request, nozzles));
  const { acceptedDeficit, limits, bounds, leftOut } = gather(registry, chosen);
  const line = fitLimitLine(limits);
  return success({
    ...{ machine, filament, nozzle, acceptedDeficit, limits, bounds, leftOut },
    otherNozzles: nozzles.filter((other) => other !== nozzle),
    origin: originOf(chosen),
    temperatures: combinedLimits(limits),
    line: line.ok ? line.value : null,
  });
}

function unknownName(
  registry: Registry,
  { machine, filament, nozzle }: PairingTrialsRequest,
): UnknownProfile<'machine' | 'filament'> | Problem<'unknownNozzle'> | null {
  const found = findProfile(registry, 'machine', machine);
  if (!found.ok) return found.error;
  const asked = findProfile(registry, 'filament', filament);
  if (!asked.ok) return asked.error;
  const nozzles = nozzleIds(found.value.data);
  return nozzle === undefined || nozzles.includes(nozzle)
    ? null
    : unknownWord('unknownNozzle', 'nozzle', nozzle, nozzles);
}

function noLadders(
  { machine, filament, nozzle }: PairingTrialsRequest,
  nozzlesWithLadders: readonly string[],
): NoLadders {
  const place = nozzle === undefined ? machine : `${machine} with the nozzle ${nozzle}`;
  return {
    code: 'noLadders',
    message: `The registry holds no flow ladder of ${filament} on ${place}`,
    help:
      nozzlesWithLadders.length === 0
        ? 'Run one, and add it as a trial.'
        : `There are ladders on ${nozzlesWithLadders.join(', ')}.`,
    nozzlesWithLadders,
  };
}

/** Those with most temperatures first, equal ones in the order of their ids. */
function nozzlesByTemperatures(ladders: readonly Profile<'trial'>[]): string[] {
  const temperatures = new Map<string, Set<number | undefined>>();
  for (const { data } of ladders) {
    const { nozzle } = data;
    if (nozzle === undefined) continue;
    temperatures.set(nozzle, (temperatures.get(nozzle) ?? new Set()).add(data.conditions.nozzleTemperature));
  }
  return [...temperatures]
    .sort(([one, ones], [other, others]) => others.size - ones.size || (one < other ? -1 : 1))
    .map(([nozzle]) => nozzle);
}

function originOf(ladders: readonly Profile<'trial'>[]): PairingReduction['origin'] {
  const origins = new Set(ladders.map(({ data }) => data.origin));
  const [origin = 'bench'] = origins;
  return origins.size > 1 ? 'mixed' : origin;
}

interface Outcome {
  readonly trial: string;
  readonly temperature: number;
  readonly acceptedDeficit: number;
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly censored: Censoring | null;
}

function gather(registry: Registry, ladders: readonly Profile<'trial'>[]) {
  const leftOut: { trial: string; reason: string }[] = [];
  const outcomes: Outcome[] = [];
  for (const ladder of ladders) {
    const outcome = outcomeOf(registry, ladder);
    if (typeof outcome === 'string') leftOut.push({ trial: ladder.id, reason: outcome });
    else outcomes.push(outcome);
  }
  const acceptedDeficit = mostShared(outcomes.map((outcome) => outcome.acceptedDeficit));
  const limits: TrialLimit[] = [];
  const bounds: TrialBound[] = [];
  for (const outcome of outcomes) {
    const { trial, temperature, value, low, high, censored } = outcome;
    if (outcome.acceptedDeficit !== acceptedDeficit) {
      leftOut.push({
        trial,
        reason: `its accepted deficit is different, ${percent(outcome.acceptedDeficit)}`,
      });
    } else if (censored !== null) bounds.push({ trial, temperature, bound: value, censored });
    else if (low !== null && high !== null && high > low)
      limits.push({ trial, temperature, limit: value, low, high });
    else leftOut.push({ trial, reason: 'its limit has no interval' });
  }
  const coldestFirst = (one: { temperature: number; trial: string }, other: typeof one) =>
    one.temperature - other.temperature || (one.trial < other.trial ? -1 : 1);
  limits.sort(coldestFirst);
  bounds.sort(coldestFirst);
  return { acceptedDeficit, limits, bounds, leftOut };
}

/** What a ladder gives, or the reason for which it is left out. */
function outcomeOf(registry: Registry, { id, data }: Profile<'trial'>): Outcome | string {
  const reduced = reduceTrial(registry, id);
  if (!reduced.ok) return reduced.error.map(({ message }) => message).join('; ');
  const result = resultOf(reduced.value, 'meltFlow');
  const temperature = data.conditions.nozzleTemperature;
  const threshold = reduced.value.curve?.threshold;
  if (result === undefined || temperature === undefined || threshold == null) {
    return 'it gives no flow limit at a nozzle temperature';
  }
  const { value, interval, censored } = result;
  const { low, high } = interval;
  return { trial: id, temperature, acceptedDeficit: threshold, value, censored, low, high };
}

/** The number that stands most often; of equals the smaller one, which is the stricter. */
function mostShared(numbers: readonly number[]): number | null {
  const count = (number: number) => numbers.filter((other) => other === number).length;
  return numbers.toSorted((one, other) => count(other) - count(one) || one - other)[0] ?? null;
}

function percent(fraction: number): string {
  return `${Number((fraction * 100).toPrecision(6))} %`;
}
