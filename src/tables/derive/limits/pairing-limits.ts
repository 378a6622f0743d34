import type { Feature } from '../../../knowledge/feature.ts';
import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import type { Statement } from '../../../registry/generated/documents.ts';
import type { AnyProfile } from '../../../registry/profile.ts';
import type { Registry } from '../../../registry/registry.ts';
import { besideOf, chooseLimit, statementsByWeight } from '../../../registry/statement.ts';
import { type Problem, type Result, refusal, success } from '../../../result.ts';
import type { DegreesCelsius } from '../../../units/canonical.ts';
import { rounded } from '../../../units/rounded.ts';
import { shown } from '../../../units/wording.ts';
import { type ContourLimit, contourLimits } from './contour-limit.ts';
import { type FirstLayer, firstLayerMelt } from './first-layer.ts';
import { type MeltAt, meltAt, type NoMeltAt } from './melt-at.ts';
import { type MeltLimit, meltLimits, type NoMeltLimit } from './melt-limit.ts';
import { chooseTemperature } from './temperature-choice.ts';
import { type TractionLimit, tractionLimit, tractionWarnings } from './traction-limit.ts';
import {
  type LimitName,
  type UsableLimit,
  usableLimit,
  usableValue,
  type WeakLimit,
} from './usable-limit.ts';

/** The limits of a pairing that its tables rest on. */
export interface PairingLimits {
  /** From the coolest nozzle temperature to the hottest; at least one. */
  readonly melt: readonly MeltLimit[];
  /** At the one nozzle temperature of the table, and whose choice that was. */
  readonly print: MeltAt;
  readonly chosenBy: string;
  /** At the nozzle temperature of the first layer. */
  readonly firstLayer: FirstLayer;
  /** What the drive pushes through the nozzle, in the print and in the first layer; null where no drive force is stated. */
  readonly traction: { readonly print: TractionLimit | null; readonly firstLayer: TractionLimit | null };
  readonly topSpeed: UsableLimit | null;
  readonly acceleration: UsableLimit;
  readonly contour: readonly ContourLimit[];
  readonly layerTime: UsableLimit | null;
  readonly warnings: readonly string[];
}

/** Why a pairing has no limits to derive from: one is not known, or rests on less than the policy asks for. */
export type LimitsProblem =
  | WeakLimit
  | NoMeltLimit
  | NoMeltAt
  | Problem<'noAcceleration'>
  | Problem<'unusablePolicy'>;

/**
 * The limits of a pairing as its policy lets tables use them, at one nozzle temperature in °C: the one asked for, else
 * the one that the policy chooses.
 */
export function pairingLimits(
  registry: Registry,
  pairing: Pairing,
  temperature?: DegreesCelsius,
): Result<PairingLimits, LimitsProblem> {
  const melt = meltLimits(registry, pairing);
  if (!melt.ok) return melt;
  const chosenTemperature = chooseTemperature(pairing, melt.value.limits, temperature);
  if (!chosenTemperature.ok) return chosenTemperature;
  const print = meltAt(melt.value.limits, chosenTemperature.value.value);
  if (!print.ok) return print;
  const { machine, filament } = pairing;
  const topSpeed = chosen(pairing, 'topSpeed', machine, machine.data.topSpeed);
  const acceleration = chosen(pairing, 'acceleration', machine, machine.data.acceleration);
  const layerTime = chosen(pairing, 'shortestLayerTime', filament, filament.data.shortestLayerTime);
  const contour = contourLimits(pairing);
  const firstLayer = firstLayerMelt(pairing, melt.value.limits, print.value);
  const tractionAt = ({ nozzleTemperature }: MeltAt) => tractionLimit(registry, pairing, nozzleTemperature);
  const traction = { print: tractionAt(print.value), firstLayer: tractionAt(firstLayer.melt) };
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
    print: print.value,
    chosenBy: chosenTemperature.value.by,
    firstLayer,
    traction,
    topSpeed: topSpeed.value,
    acceleration: acceleration.value,
    contour: contour.value,
    layerTime: layerTime.value,
    warnings: [
      ...melt.value.warnings,
      ...besideWarnings(pairing),
      ...tractionWarnings(registry, pairing),
      ...weakDriveWarning(traction.print, print.value),
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
  const safe = name === 'shortestLayerTime' ? 'above' : 'below';
  const statement = chooseLimit(statements, conditionsOf(pairing), safe);
  return statement === null ? success(null) : usableLimit(pairing.policy, name, profile, statement);
}

/** That the drive pushes less than melts. */
function weakDriveWarning(traction: TractionLimit | null, melt: MeltAt): string[] {
  if (traction === null || traction.flow >= usableValue(melt)) return [];
  const [pushed, melted] = [traction.flow, usableValue(melt)].map((flow) =>
    shown(rounded(flow, 3), 'volumeFlow'),
  );
  return [`The drive pushes no more than ${pushed} through this nozzle, less than the ${melted} that melt.`];
}

/** That a limit is the safest of several that were measured under the same conditions, for each that is. */
function besideWarnings(pairing: Pairing): string[] {
  const { machine, filament } = pairing;
  const conditions = conditionsOf(pairing);
  const named = [
    ['top speeds', 'lowest', machine.data.topSpeed],
    ['accelerations', 'lowest', machine.data.acceleration],
    ['contour speeds', 'lowest', filament.data.contourSpeed ?? machine.data.contourSpeed],
    ['shortest layer times', 'longest', filament.data.shortestLayerTime],
  ] as const;
  return named.flatMap(([what, end, statements]) => {
    const byWeight = statementsByWeight<number>(statements, ({ at }) => at ?? {}, conditions);
    const [first] = byWeight;
    const beside = first === undefined ? [] : besideOf(first, byWeight, conditions);
    return beside.length > 1
      ? [`${beside.length} ${what} were measured under the same conditions: the ${end} counts.`]
      : [];
  });
}

/** What the drive pushes at the nozzle temperature that a feature is printed at. */
export function tractionFor({ traction }: PairingLimits, feature: Feature): TractionLimit | null {
  return feature === 'firstLayer' ? traction.firstLayer : traction.print;
}

/** What melts at the nozzle temperature that a feature is printed at. */
export function meltOf({ print, firstLayer }: PairingLimits, feature: Feature): MeltAt {
  return feature === 'firstLayer' ? firstLayer.melt : print;
}
