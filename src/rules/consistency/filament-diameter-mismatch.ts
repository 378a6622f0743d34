import { fitsHotEnd, isFilamentDiameter } from '../../knowledge/filament-diameters.ts';
import { blamedAtHotEnd } from '../../knowledge/flow-limits.ts';
import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import { trialIndex } from '../../knowledge/trial-index.ts';
import type { Filament, Machine, Trial } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import type { HotEnd } from '../../registry/nozzle.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** So many trials that do not fit, and none that does, show that the one figure that they share is wrong. */
const telling = 3;

export const rule: ProfileRule<'trial' | 'filament' | 'machine'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial', 'filament', 'machine'],
  severity: 'error',
  statement: 'A trial runs a filament in a hot end made for its diameter.',
  rationale:
    'A thicker filament does not go in, a thinner one buckles, and the flow is calculated from the wrong cross-section.',
  source: 'Continuity: the flow follows the square of the diameter.',
  example: {
    kind: 'filament',
    bad: 'diameter: 2.85 mm',
    good: 'diameter: 1.75 mm',
  },
  *check(profile, { registry }) {
    if (profile.kind === 'trial') yield* trialHits(profile.data, registry);
    else if (profile.kind === 'filament') yield* filamentHits(profile.data, registry);
    else yield* machineHits(profile.data, registry);
  },
};

function* trialHits(trial: Trial, registry: Registry): Generator<Hit> {
  const misfit = misfitOf(trial, registry);
  if (misfit === null) return;
  const { machine, hotEnd, filament } = misfit;
  yield {
    path: ['filament'],
    part: 'value',
    blames: [
      { of: { kind: 'filament', id: filament.id }, path: ['diameter'] },
      ...blamedAtHotEnd({ machine, hotEnd }, 'filamentDiameter'),
    ],
    message: `The filament measures ${shown(filament.diameter, 'length')}, but the hot end "${hotEnd.id}" of ${machine.id} takes ${shown(hotEnd.filamentDiameter, 'length')}`,
    found: shown(filament.diameter, 'length'),
    allowed: shown(hotEnd.filamentDiameter, 'length'),
    help: 'Correct the filament, the machine or the nozzle of the trial, or the diameter in one of their profiles.',
  };
}

function* filamentHits(filament: Filament, registry: Registry): Generator<Hit> {
  const misfits = allMisfits(trialIndex(registry).byFilament.get(filament.id), registry);
  const [first] = misfits;
  if (first === undefined || isHotEndWrong(first, registry)) return;
  const other = shown(first.hotEnd.filamentDiameter, 'length');
  yield {
    path: ['diameter'],
    part: 'value',
    message: `The filament measures ${shown(filament.diameter, 'length')}, but all ${misfits.length} trials of it ran in hot ends for another diameter, such as "${first.hotEnd.id}" of ${first.machine.id} for ${other}`,
    found: shown(filament.diameter, 'length'),
    allowed: other,
    help: 'Measure the filament, or look at the label of the spool, and correct the diameter; correct the trials if they ran another one.',
  };
}

function* machineHits(machine: Machine, registry: Registry): Generator<Hit> {
  for (const [index, hotEnd] of machine.hotEnds.entries()) {
    const [first] = misfitsOfHotEnd({ machine, hotEnd }, registry);
    if (first === undefined || !isHotEndWrong(first, registry)) continue;
    const other = shown(first.filament.diameter, 'length');
    yield {
      path: ['hotEnds', index, 'filamentDiameter'],
      part: 'value',
      message: `The hot end "${hotEnd.id}" takes ${shown(hotEnd.filamentDiameter, 'length')}, but all filaments that ran in it measure otherwise, such as ${first.filament.id} with ${other}`,
      found: shown(hotEnd.filamentDiameter, 'length'),
      allowed: other,
      help: 'Look it up in the manual of the machine, and correct the diameter; correct the trials if they ran in another hot end.',
    };
  }
}

/** The trials, if there are enough of them and none fits; else none. */
function allMisfits(trials: readonly Profile<'trial'>[] = [], registry: Registry): Misfit[] {
  const fitted = trials.filter(({ data }) => pairingOfTrial(data, registry).hotEnd !== null);
  const misfits = fitted.flatMap(({ data }) => misfitOf(data, registry) ?? []);
  return misfits.length < telling || misfits.length < fitted.length ? [] : misfits;
}

function misfitsOfHotEnd({ machine, hotEnd }: HotEndOfMachine, registry: Registry): Misfit[] {
  const ran = (trialIndex(registry).byMachine.get(machine.id) ?? []).filter(
    ({ data }) => pairingOfTrial(data, registry).hotEnd === hotEnd,
  );
  return allMisfits(ran, registry);
}

/** Several filaments that do not fit tell against the hot end, not against each of them. */
function isHotEndWrong(misfit: HotEndOfMachine, registry: Registry): boolean {
  return new Set(misfitsOfHotEnd(misfit, registry).map(({ filament }) => filament.id)).size > 1;
}

interface HotEndOfMachine {
  readonly machine: Machine;
  readonly hotEnd: HotEnd;
}

interface Misfit extends HotEndOfMachine {
  readonly filament: Filament;
}

function misfitOf(trial: Trial, registry: Registry): Misfit | null {
  const { machine, hotEnd, filament } = pairingOfTrial(trial, registry);
  if (machine === null || hotEnd === null || filament === null) return null;
  if (!isFilamentDiameter(hotEnd.filamentDiameter) || !isFilamentDiameter(filament.diameter)) return null;
  return fitsHotEnd(filament.diameter, hotEnd.filamentDiameter) ? null : { machine, hotEnd, filament };
}
