import { conditionsOf, type Pairing } from '../../knowledge/pairing.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { type ContourLimit, contourLimits } from './contour-limit.ts';
import { type MeltLimit, meltLimits, type NoMeltLimit } from './melt-limit.ts';
import { type LimitName, type UsableLimit, usableLimit, type WeakLimit } from './usable-limit.ts';

/** The limits of a pairing that its tables rest on. */
export interface PairingLimits {
  /** From the coolest nozzle temperature to the hottest; at least one. */
  readonly melt: readonly MeltLimit[];
  /** The one with the largest usable flow. */
  readonly largestMelt: MeltLimit;
  readonly topSpeed: UsableLimit | null;
  readonly acceleration: UsableLimit;
  readonly contour: readonly ContourLimit[];
  readonly layerTime: UsableLimit | null;
  readonly warnings: readonly string[];
}

/** Why a pairing has no limits to derive from: one is not known, or rests on less than the policy asks for. */
export type LimitsProblem = WeakLimit | NoMeltLimit | Problem<'noAcceleration'>;

/** The limits of a pairing as its policy lets tables use them. */
export function pairingLimits(registry: Registry, pairing: Pairing): Result<PairingLimits, LimitsProblem> {
  const melt = meltLimits(registry, pairing);
  if (!melt.ok) return melt;
  const { machine, filament } = pairing;
  const topSpeed = chosen(pairing, 'topSpeed', machine, machine.data.topSpeed);
  const acceleration = chosen(pairing, 'acceleration', machine, machine.data.acceleration);
  const layerTime = chosen(pairing, 'shortestLayerTime', filament, filament.data.shortestLayerTime);
  const contour = contourLimits(pairing);
  if (!topSpeed.ok) return topSpeed;
  if (!acceleration.ok) return acceleration;
  if (!layerTime.ok) return layerTime;
  if (!contour.ok) return contour;
  if (acceleration.value === null) {
    return refusal(
      'noAcceleration',
      `No acceleration of ${machine.id} is known for this pairing`,
      'State one in the profile of the machine.',
    );
  }
  const unknown = {
    [`No top speed of ${machine.id} is known: the machine does not bound.`]: topSpeed.value === null,
    [`No shortest layer time of ${filament.id} is known: cooling does not bound.`]: layerTime.value === null,
    'No contour speed is known: surface quality does not bound.': contour.value.length === 0,
  };
  return success({
    melt: melt.value.limits,
    largestMelt: largest(melt.value.limits),
    topSpeed: topSpeed.value,
    acceleration: acceleration.value,
    contour: contour.value,
    layerTime: layerTime.value,
    warnings: [
      ...melt.value.warnings,
      ...Object.entries(unknown).flatMap(([sentence, holds]) => (holds ? [sentence] : [])),
    ],
  });
}

function chosen(
  pairing: Pairing,
  name: LimitName,
  profile: AnyProfile,
  statements: readonly Statement<number>[] | undefined,
): Result<UsableLimit | null, WeakLimit> {
  const statement = chooseStatement(statements, conditionsOf(pairing));
  return statement === null ? success(null) : usableLimit(pairing.policy, name, profile, statement);
}

/** The part of a limit's value that tables may use. */
export function usableValue({ value, cap }: UsableLimit): number {
  return value * (cap?.share ?? 1);
}

function largest(limits: readonly MeltLimit[]): MeltLimit {
  return limits.reduce((best, limit) => (usableValue(limit) > usableValue(best) ? limit : best));
}
