import { findProfile, type UnknownProfile } from '../registry/find-profile.ts';
import { groupedBy } from '../registry/grouped-by.ts';
import { type FittedNozzle, type HotEnd, nozzleIds, nozzlesOf } from '../registry/nozzle.ts';
import type { Profile } from '../registry/profile.ts';
import { idsOf, type Registry } from '../registry/registry.ts';
import type { Conditions } from '../registry/statement.ts';
import { failure, type Problem, type Result, refusal, success } from '../result.ts';
import { unknownWord } from '../text/unknown-word.ts';
import type { Millimetres } from '../units/canonical.ts';

/** A machine with a nozzle and a filament. */
export interface FittedPairing extends FittedNozzle {
  readonly machine: Profile<'machine'>;
  readonly filament: Profile<'filament'>;
  /** Batch that is printed, where it is known. */
  readonly batch?: string;
}

/** The same under the rules of a policy. */
export interface Pairing extends FittedPairing {
  readonly policy: Profile<'policy'>;
}

export interface FittedRequest {
  readonly machine: string;
  readonly filament: string;
  /**
   * Id of the nozzle; by default the one for which the filament has a measured limit, else the first that fits. A machine
   * with several hot ends needs it, unless exactly one of its nozzles has a measured limit.
   */
  readonly nozzle?: string;
  /** Batch of the filament that is printed; by default it is not known, and limits of every batch count. */
  readonly batch?: string;
}

/** A pairing by its ids, and the policy that its tables follow. */
export interface PairingRequest extends FittedRequest {
  /** Id of the policy; by default the only one of the registry. */
  readonly policy?: string;
}

/** Why a machine, a nozzle and a filament make no pairing. */
export type FittedProblem = UnknownProfile<'machine' | 'filament'> | NozzleProblem;

type NozzleProblem = Problem<'unknownNozzle' | 'otherDiameter' | 'severalHotEnds'>;

/** Why there is no pairing under a policy. */
export type PairingProblem = FittedProblem | PolicyProblem;

type PolicyProblem = UnknownProfile<'policy'> | Problem<'noPolicy' | 'severalPolicies'>;

/** Finds what a request names. The problem says what there is instead. */
export function findPairing(registry: Registry, request: PairingRequest): Result<Pairing, PairingProblem> {
  const fitted = findFittedPairing(registry, request);
  if (!fitted.ok) return fitted;
  const policy = choosePolicy(registry, request.policy);
  return policy.ok ? success({ ...fitted.value, policy: policy.value }) : policy;
}

/** As `findPairing`, where no policy matters; with `anyNozzle` whichever fits will do, as where nothing is melted. */
export function findFittedPairing(
  registry: Registry,
  request: FittedRequest,
  { anyNozzle = false }: { readonly anyNozzle?: boolean } = {},
): Result<FittedPairing, FittedProblem> {
  const machine = findProfile(registry, 'machine', request.machine);
  if (!machine.ok) return machine;
  const filament = findProfile(registry, 'filament', request.filament);
  if (!filament.ok) return filament;
  const fitted = chooseNozzle(machine.value, filament.value, request.nozzle, anyNozzle);
  if (!fitted.ok) return fitted;
  return success({
    machine: machine.value,
    filament: filament.value,
    ...fitted.value,
    ...(request.batch !== undefined && { batch: request.batch }),
  });
}

/** Conditions of a pairing, against which statements are chosen. */
export function conditionsOf({ machine, nozzle, filament, batch }: FittedPairing): Conditions {
  return {
    machine: machine.id,
    nozzle: nozzle.id,
    filament: filament.id,
    polymer: filament.data.polymer,
    ...(batch !== undefined && { batch }),
  };
}

function chooseNozzle(
  machine: Profile<'machine'>,
  filament: Profile<'filament'>,
  asked: string | undefined,
  anyNozzle: boolean,
): Result<FittedNozzle, NozzleProblem> {
  const all = nozzlesOf(machine.data);
  const fitting = all.filter(({ hotEnd }) => takes(hotEnd, filament.data.diameter));
  if (asked !== undefined) {
    const found = all.find(({ nozzle }) => nozzle.id === asked);
    if (found === undefined)
      return failure(unknownWord('unknownNozzle', 'nozzle', asked, nozzleIds(machine.data)));
    if (!fitting.includes(found)) return otherDiameter(machine, filament, found);
    return success(found);
  }
  const measured = fitting.filter((fitted) => isMeasured(machine, filament, fitted));
  const hotEnds = new Set(fitting.map(({ hotEnd }) => hotEnd.id));
  if (!anyNozzle && hotEnds.size > 1 && measured.length !== 1)
    return severalHotEnds(machine, filament, fitting);
  const chosen = measured[0] ?? fitting[0];
  return chosen === undefined ? otherDiameter(machine, filament, all[0]) : success(chosen);
}

/** Whether the filament has a measured flow limit with a nozzle of the machine. */
function isMeasured(
  machine: Profile<'machine'>,
  filament: Profile<'filament'>,
  { hotEnd, nozzle }: FittedNozzle,
): boolean {
  const own = (filament.data.meltFlow ?? []).filter(({ at }) => at?.machine === machine.id);
  const ofHotEnd = (hotEnd.meltFlow ?? []).filter(({ at }) => at?.filament === filament.id);
  return [...own, ...ofHotEnd].some(({ basis, at }) => basis === 'measured' && at?.nozzle === nozzle.id);
}

/** Which hot end is meant decides on temperatures and flows, so that nobody should guess. */
function severalHotEnds(
  machine: Profile<'machine'>,
  filament: Profile<'filament'>,
  fitting: readonly FittedNozzle[],
) {
  const byHotEnd = [...groupedBy(fitting, ({ hotEnd }) => hotEnd.id)].map(
    ([id, nozzles]) => `${nozzles.map(({ nozzle }) => nozzle.id).join(', ')} in hot end "${id}"`,
  );
  return refusal(
    'severalHotEnds',
    `${machine.id} has ${byHotEnd.length} hot ends that take ${filament.id}`,
    `Name a nozzle: ${byHotEnd.join('; ')}. With \`--nozzle\`, or behind the machine in \`compare\`.`,
  );
}

/** Nominal diameters differ by a millimetre or so; a hundredth is a matter of notation. */
export function takes(hotEnd: HotEnd, diameter: Millimetres): boolean {
  return Math.abs(hotEnd.filamentDiameter - diameter) < 0.01;
}

function otherDiameter(
  machine: Profile<'machine'>,
  filament: Profile<'filament'>,
  fitted: FittedNozzle | undefined,
) {
  return refusal(
    'otherDiameter',
    `${filament.id} is a ${filament.data.diameter} mm filament, but ${machine.id} takes ${fitted?.hotEnd.filamentDiameter ?? 'another'} mm there`,
    'Choose a filament or a machine of the same diameter.',
  );
}

function choosePolicy(
  registry: Registry,
  asked: string | undefined,
): Result<Profile<'policy'>, PolicyProblem> {
  const [first, ...others] = idsOf(registry, 'policy');
  if (asked !== undefined) return findProfile(registry, 'policy', asked);
  if (first === undefined) return noPolicy();
  if (others.length === 0) return findProfile(registry, 'policy', first);
  return refusal(
    'severalPolicies',
    'The registry holds several policies',
    `Name one with --policy: ${[first, ...others].join(', ')}.`,
  );
}

export function noPolicy() {
  return refusal('noPolicy', 'The registry holds no policy', 'Add one under policies/.');
}
