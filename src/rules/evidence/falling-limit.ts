import { trialLimit } from '../../evidence/trial-limit.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Profile } from '../../registry/profile.ts';
import { oncePerRegistry } from '../../registry/registry.ts';
import { shown } from '../../units/wording.ts';
import { allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule, RuleContext } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The flow limit of a filament on one nozzle does not fall when the nozzle gets hotter.',
  rationale:
    'More heat melts faster; if the limit falls by more than its interval, the two trials differ in something else.',
  source:
    'Mackay et al., J. Rheology 61 (2017) 229-236: the highest feed velocity rises with the set temperature.',
  formula: 'Q_high(hotter) >= Q_low(colder), ends of the 95 % coverage intervals of the flow limits',
  example: {
    kind: 'trial',
    copied: true,
    bad: `
id: wren-clover-petg-260
conditions: {nozzleTemperature: 260 Cel}${ladder(allFlows, { times: 0.5, apart: 0.002 })}
events:
  - {event: halted, commandedFlow: 13 mm3/s}`,
    good: `
id: wren-clover-petg-260
conditions: {nozzleTemperature: 260 Cel}${ladder(allFlows, { apart: 0.002 })}`,
  },
  *check(profile, context) {
    const own = trialLimit(profile, context);
    if (own === null) return;
    for (const colder of colderTrials(profile, context)) {
      const bounds = trialLimit(colder, context);
      if (bounds === null || own.high >= bounds.low) continue;
      yield {
        path: ['conditions', 'nozzleTemperature'],
        part: 'value',
        message: `The limit falls: the trial "${colder.id}" gives ${shown(bounds.low, 'volumeFlow')} or more at ${temperatureOf(colder)}, this one ${shown(own.high, 'volumeFlow')} or less at ${temperatureOf(profile)}`,
        found: `up to ${shown(own.high, 'volumeFlow')}`,
        allowed: `from ${shown(bounds.low, 'volumeFlow')}`,
        help: 'Look for what differs between the two: spool, moisture, fan, a worn drive; check flows, units and temperature.',
      };
      return;
    }
  },
};

const pairings = oncePerRegistry((registry) => groupedBy(registry.trial.values(), pairingKey));

function pairingKey({ data: { machine, nozzle, filament } }: Profile<'trial'>): string {
  return [machine, nozzle, filament].join(' ');
}

/** The trials of the same pairing at lower temperatures. */
function colderTrials(trial: Profile<'trial'>, { registry }: RuleContext): Profile<'trial'>[] {
  const { nozzleTemperature } = trial.data.conditions;
  if (nozzleTemperature === undefined) return [];
  const all = pairings(registry).get(pairingKey(trial)) ?? [];
  return all.filter(
    ({ data }) => (data.conditions.nozzleTemperature ?? Number.POSITIVE_INFINITY) < nozzleTemperature,
  );
}

function temperatureOf({ data }: Profile<'trial'>): string {
  const { nozzleTemperature } = data.conditions;
  return nozzleTemperature === undefined ? 'an unknown temperature' : shown(nozzleTemperature, 'temperature');
}
