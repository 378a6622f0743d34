import { trialLimit } from '../../evidence/trial-limit.ts';
import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import type { Machine } from '../../registry/generated/documents.ts';
import { findNozzle } from '../../registry/nozzle.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { CubicMillimetresPerSecond } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Sheets promise up to twice what benches find; a third has another reason. */
const leastShare = 0.3;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A trial reaches at least a third of what the machine claims for that polymer and nozzle.',
  rationale:
    'A ladder in cm3/h instead of mm3/s, or one that stopped far too early, makes the claim look exaggerated.',
  source: `Machine profile, meltFlow by claim; ${leastShare * 100} % are common practice, no source.`,
  formula: `Q_trial >= ${leastShare} Q_claimed, the same polymer, a nozzle at least as wide`,
  example: alike('machine', { bad: '84 mm3/s', good: '42 mm3/s' }, (flow) =>
    hotEnd({ meltFlow: [flow, 'polymer: PET-G'] }),
  ),
  *check(profile, context) {
    const claim = claimFor(profile, context.registry);
    const limit = claim === null ? null : trialLimit(profile, context);
    // A halt ends a ladder before its limit; how early is the finding of the trial, and no slip.
    if (claim === null || limit === null || wasHalted(profile, limit.high)) return;
    if (limit.value >= leastShare * claim) return;
    yield {
      path: ['observations'],
      part: 'key',
      message: `The readings give ${shown(limit.value, 'volumeFlow')}${limit.high === Number.POSITIVE_INFINITY ? ' or more' : ''}, far short of the ${shown(claim, 'volumeFlow')} that ${profile.data.machine} claims for this polymer and nozzle`,
      found: shown(limit.value, 'volumeFlow'),
      allowed: `from ${shown(leastShare * claim, 'volumeFlow')}`,
      help: 'Check the unit of the flows and the claim. If the ladder stopped early, continue it from its highest flow.',
    };
  },
};

function wasHalted({ data }: Profile<'trial'>, high: number): boolean {
  return high === Number.POSITIVE_INFINITY && (data.events ?? []).length > 0;
}

/** The largest flow that the machine claims for the polymer of a trial through a nozzle that is no wider. */
function claimFor({ data }: Profile<'trial'>, registry: Registry): CubicMillimetresPerSecond | null {
  const { machine, hotEnd, nozzle, filament } = pairingOfTrial(data, registry);
  if (machine === null || hotEnd === null || nozzle === null || filament === null) return null;
  const flows = (hotEnd.meltFlow ?? [])
    .filter(({ basis, at }) => {
      const claimed = diameterOf(at?.nozzle, machine);
      return basis === 'claimed' && at?.polymer === filament.polymer && claimed <= nozzle.diameter;
    })
    .map(({ value }) => value);
  return flows.length === 0 ? null : Math.max(...flows);
}

function diameterOf(nozzle: string | undefined, machine: Machine): number {
  const fitted = nozzle === undefined ? null : findNozzle(machine, nozzle);
  return fitted?.nozzle.diameter ?? Number.POSITIVE_INFINITY;
}
