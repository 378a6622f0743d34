import { familiesOf } from '../../knowledge/families.ts';
import { leastHeat } from '../../knowledge/melt-heat.ts';
import type { Profile } from '../../registry/profile.ts';
import { rounded } from '../../units/rounded.ts';
import { shown } from '../../units/wording.ts';
import type { Claim } from './claim.ts';
import { evidenceFrom, highestFirst, settingOf, temperaturesReached } from './claim-evidence.ts';
import {
  type ClaimContext,
  type ClaimEvidence,
  type ClaimVerdict,
  conformanceBy,
  holds,
  untestedClaim,
} from './claim-verdict.ts';
import { judgeMeasured } from './judge-measured.ts';

/** Said of a claim that trials test directly where the registry has none of them. */
const noTrial = {
  contourSpeed: 'no contour ladder is in the registry',
  soundLevel: 'no sound measurement is in the registry',
};

/** A claimed contour speed against the best ladder, or a sound level, where less is better, against the loudest. */
export function judgeTestedClaim(
  claim: Claim,
  property: keyof typeof noTrial,
  trials: readonly Profile<'trial'>[],
  measured: readonly ClaimEvidence[],
  context: ClaimContext,
): ClaimVerdict {
  const tested = trials.flatMap((trial) => evidenceFrom(trial, property, context) ?? []);
  const found = highestFirst([...tested, ...measured]);
  return judgeMeasured(claim, found, context.rule) ?? untestedClaim(noTrial[property]);
}

/**
 * A claimed limit of a setting: against what a thermometer showed where it was set that high, else against the highest
 * that trials were set to or measured, which is no fault of it, since nothing asks to go there.
 */
export function judgeSettingClaim(
  claim: Claim,
  setting: string,
  trials: readonly Profile<'trial'>[],
  measured: readonly ClaimEvidence[],
  context: ClaimContext,
): ClaimVerdict {
  const reached = temperaturesReached(trials, setting, claim.statement.value, context);
  const asked = reached.filter(({ censored }) => censored === null);
  const judgedByCheck = judgeMeasured(claim, highestFirst(asked), context.rule);
  if (judgedByCheck !== null) return judgedByCheck;
  const settings = trials.flatMap((trial) => {
    const value = Object.entries(trial.data.conditions).find(([name]) => name === setting)?.[1];
    return value === undefined ? [] : settingOf(trial, value, context);
  });
  const [highest, ...rest] = highestFirst([...reached, ...measured, ...settings]);
  if (highest === undefined) return untestedClaim('no trial was set to it, and no set point was checked');
  const judged = judgeMeasured(claim, [highest, ...rest], context.rule);
  if (judged !== null && judged.status !== 'notReached') return judged;
  return untestedClaim(`trials have run at up to ${shown(highest.value, claim.dimension)}`, [highest]);
}

/** A claimed heater power against the heat that ladders have put into the melt. */
export function judgeHeaterClaim(
  claim: Claim,
  trials: readonly Profile<'trial'>[],
  context: ClaimContext,
): ClaimVerdict {
  const { registry } = context;
  const heats = trials
    .flatMap((trial) => {
      const flow = evidenceFrom(trial, 'meltFlow', context);
      const filament = registry.filament.get(trial.data.filament)?.data;
      if (flow === null || filament === undefined || flow.censored === 'below') return [];
      const { nozzleTemperature } = flow;
      const { perVolume } = leastHeat({ families: familiesOf(filament, registry), nozzleTemperature });
      const least = (flow.interval?.low ?? flow.value) * perVolume;
      return { ...flow, value: least, interval: null, censored: 'above' as const };
    })
    .toSorted((a, b) => b.value - a.value);
  const [most] = heats;
  if (most === undefined) return untestedClaim('no flow ladder shows how much it melts');
  const text = `the melt has taken up at least ${shown(rounded(most.value, 3), 'power')}, losses left out`;
  const { value } = claim.statement;
  if (!holds(value, most, false)) return untestedClaim(text, [most]);
  const conformance = conformanceBy(value, most, false);
  return { status: 'held', text, shortfall: null, conformance, evidence: heats };
}
