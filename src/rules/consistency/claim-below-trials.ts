import { trialLimit } from '../../evidence/trial-limit.ts';
import { trialIndex } from '../../knowledge/trial-index.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import { stated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import { hotEnd } from '../engine/examples.ts';
import type { ProfileRule, RuleContext } from '../engine/rule.ts';

/** A hotter nozzle, an easier polymer and a careful sheet together give less. */
const factor = 2;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine'],
  severity: 'warning',
  statement: 'A machine does not claim far less flow than trials on the same nozzle have found.',
  rationale: 'Data sheets do not understate: the claim has lost a digit, or is in cm3/h instead of mm3/s.',
  source: `Trials of the registry on the same nozzle; a factor of ${factor} is common practice, no source.`,
  formula: `Q_trial <= ${factor} Q_claimed, Q_trial the lower end of the flow limit`,
  example: {
    kind: 'machine',
    bad: `
topSpeed:
  - {value: 160 mm/s, basis: claimed, source: plumstead-wren-sheet}${hotEnd({ meltFlow: ['32 cm3/h', 'polymer: PLA, nozzleTemperature: 230 Cel'] })}`,
    good: hotEnd({ meltFlow: ['32 mm3/s', 'polymer: PLA, nozzleTemperature: 230 Cel'] }),
  },
  *check(profile, context) {
    for (const [index, { meltFlow }] of profile.data.hotEnds.entries()) {
      for (const { path, value, statement } of stated(meltFlow, ['hotEnds', index, 'meltFlow'])) {
        const best = statement.basis === 'claimed' ? bestTrial(profile.id, statement, context) : null;
        if (best === null || best.flow <= factor * value) continue;
        yield {
          path,
          part: 'value',
          message: `${shown(value, 'volumeFlow')} is claimed, but the trial "${best.id}" on the same nozzle gives ${shown(best.flow, 'volumeFlow')} or more`,
          found: shown(value, 'volumeFlow'),
          allowed: `from ${shown(best.flow / factor, 'volumeFlow')}`,
          help: 'Check the claim against the sheet, digits and unit, and the flows of the trial.',
        };
      }
    }
  },
};

/** The trial with the highest limit on the nozzle of a claim, by the lower end of what its readings leave possible. */
function bestTrial(
  machine: string,
  { at }: Statement<number>,
  context: RuleContext,
): { readonly id: string; readonly flow: number } | null {
  if (at?.nozzle === undefined) return null;
  const trials = trialIndex(context.registry).byMachine.get(machine) ?? [];
  const limits = trials
    .filter(({ data }) => data.nozzle === at.nozzle)
    .map((trial) => ({ id: trial.id, flow: trialLimit(trial, context)?.low ?? 0 }))
    .sort((a, b) => b.flow - a.flow);
  return limits[0] ?? null;
}
