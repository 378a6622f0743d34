import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import { highestStated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In K: sensors of room and chamber differ by less. */
const sensorAllowance = 5;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The chamber temperature of a trial lies between room temperature and the limit of the chamber.',
  rationale:
    'Above its limit the chamber damages belts and motors; a chamber colder than its room has lost a digit.',
  source: `Machine profile, temperatureLimit of the chamber; nothing in a machine cools below its room; ${sensorAllowance} K for the sensors are common practice, no source.`,
  formula: `T_room - ${sensorAllowance} K <= T_chamber <= T_limit`,
  example: {
    kind: 'trial',
    bad: `
conditions: {nozzleTemperature: 245 Cel, ambientTemperature: 28 Cel, chamberTemperature: 20 Cel}`,
    good: `
conditions: {nozzleTemperature: 245 Cel, ambientTemperature: 21 Cel, chamberTemperature: 32 Cel}`,
  },
  *check(profile, { registry }) {
    const { chamberTemperature, ambientTemperature } = profile.data.conditions;
    if (chamberTemperature === undefined) return;
    const limit = highestStated(pairingOfTrial(profile.data, registry).machine?.chamber.temperatureLimit);
    const found = shown(chamberTemperature, 'temperature');
    const place = { path: ['conditions', 'chamberTemperature'], part: 'value', found } as const;
    const help = 'Check the digits and units of both.';
    if (limit !== null && chamberTemperature > limit) {
      yield {
        ...place,
        message: `The chamber is at ${found}, but the chamber of ${profile.data.machine} only reaches ${shown(limit, 'temperature')}`,
        allowed: `up to ${shown(limit, 'temperature')}`,
        help,
      };
    }
    if (ambientTemperature !== undefined && chamberTemperature < ambientTemperature - sensorAllowance) {
      yield {
        ...place,
        message: `The chamber is at ${found}, colder than its room, ${shown(ambientTemperature, 'temperature')}`,
        allowed: `from ${shown(ambientTemperature - sensorAllowance, 'temperature')}`,
        help,
      };
    }
  },
};
