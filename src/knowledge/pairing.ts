import { type FittedNozzle, type HotEnd, nozzleIds, nozzlesOf } from '../registry/nozzle.ts';
import type { Profile } from '../registry/profile.ts';
import { idsOf, type Registry } from '../registry/registry.ts';
import type { Conditions } from '../registry/statement.ts';
import { failure, type Result, success } from '../result.ts';
import { nearestWord } from '../text/nearest-word.ts';
import { quote } from '../text/quote.ts';
import type { Millimetres } from '../units/canonical.ts';

/** A machine with a nozzle and a filament. */
export interface FittedPairing extends FittedNozzle {
  readonly machine: Profile<'machine'>;
  readonly filament: Profile<'filament'>;
}

/** The same under the rules of a policy. */
export interface Pairing extends FittedPairing {
  readonly policy: Profile<'policy'>;
}

export interface FittedRequest {
  readonly machine: string;
  readonly filament: string;
  /** Id of the nozzle; by default the one for which the filament has a measured limit, else the first that fits. */
  readonly nozzle?: string;
}

/** A pairing by its ids, and the policy that its tables follow. */
export interface PairingRequest extends FittedRequest {
  /** Id of the policy; by default the only one of the registry. */
  readonly policy?: string;
}

/** Finds what a request names, or says what there is instead. */
export function findPairing(registry: Registry, request: PairingRequest): Result<Pairing, string> {
  const fitted = findFittedPairing(registry, request);
  if (!fitted.ok) return fitted;
  const policy = choosePolicy(registry, request.policy);
  return policy.ok ? success({ ...fitted.value, policy: policy.value }) : policy;
}

/** As `findPairing`, where no policy matters. */
export function findFittedPairing(registry: Registry, request: FittedRequest): Result<FittedPairing, string> {
  const machine = registry.machine.get(request.machine);
  if (machine === undefined)
    return failure(unknownId('machine', request.machine, idsOf(registry, 'machine')));
  const filament = registry.filament.get(request.filament);
  if (filament === undefined) {
    return failure(unknownId('filament', request.filament, idsOf(registry, 'filament')));
  }
  const fitted = chooseNozzle(machine, filament, request.nozzle);
  return fitted.ok ? success({ machine, filament, ...fitted.value }) : fitted;
}

/** Conditions of a pairing, against which statements are chosen. */
export function conditionsOf({ machine, nozzle, filament }: FittedPairing): Conditions {
  return {
    machine: machine.id,
    nozzle: nozzle.id,
    filament: filament.id,
    polymer: filament.data.polymer,
  };
}

function chooseNozzle(
  machine: Profile<'machine'>,
  filament: Profile<'filament'>,
  asked: string | undefined,
): Result<FittedNozzle, string> {
  const all = nozzlesOf(machine.data);
  const fitting = all.filter(({ hotEnd }) => takes(hotEnd, filament.data.diameter));
  if (asked !== undefined) {
    const found = all.find(({ nozzle }) => nozzle.id === asked);
    if (found === undefined) return failure(unknownId('nozzle', asked, nozzleIds(machine.data)));
    if (!fitting.includes(found)) return failure(wrongDiameter(machine, filament, found));
    return success(found);
  }
  const measured = fitting.find(({ nozzle }) =>
    filament.data.meltFlow?.some(({ at }) => at?.machine === machine.id && at.nozzle === nozzle.id),
  );
  const chosen = measured ?? fitting[0];
  return chosen === undefined ? failure(wrongDiameter(machine, filament, all[0])) : success(chosen);
}

/** Nominal diameters differ by a millimetre or so; a hundredth is a matter of notation. */
export function takes(hotEnd: HotEnd, diameter: Millimetres): boolean {
  return Math.abs(hotEnd.filamentDiameter - diameter) < 0.01;
}

function wrongDiameter(
  machine: Profile<'machine'>,
  filament: Profile<'filament'>,
  fitted: FittedNozzle | undefined,
): string {
  return `${filament.id} is a strand of ${filament.data.diameter} mm, but ${machine.id} takes ${fitted?.hotEnd.filamentDiameter ?? 'another'} mm there.`;
}

function choosePolicy(registry: Registry, asked: string | undefined): Result<Profile<'policy'>, string> {
  const ids = idsOf(registry, 'policy');
  if (asked === undefined && ids.length !== 1) {
    return failure(
      ids.length === 0
        ? 'The registry holds no policy; add one under policies/.'
        : `The registry holds several policies; name one with --policy: ${ids.join(', ')}.`,
    );
  }
  const policy = registry.policy.get(asked ?? ids[0] ?? '');
  return policy === undefined ? failure(unknownId('policy', asked ?? '', ids)) : success(policy);
}

/** What is said of an id that the registry does not hold: the nearest one, or all that there are. */
export function unknownId(what: string, id: string, known: readonly string[]): string {
  const nearest = nearestWord(id, known);
  const hint = nearest === null ? `There are: ${known.join(', ') || 'none'}.` : `Did you mean "${nearest}"?`;
  return `There is no ${what} "${quote(id)}". ${hint}`;
}
