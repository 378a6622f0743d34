import type { Pairing } from '../../../knowledge/pairing.ts';
import { type Problem, type Result, refusal, success } from '../../../result.ts';
import type { DegreesCelsius } from '../../../units/canonical.ts';
import { parseQuantity } from '../../../units/parse-quantity.ts';
import type { MeltLimit } from './melt-limit.ts';
import { usableValue } from './usable-limit.ts';

/** The one nozzle temperature of a table, and whose choice it was. */
interface ChosenTemperature {
  readonly value: DegreesCelsius;
  /** In words: `of those tested the one with the largest flow, by policy "workshop"`. */
  readonly by: string;
}

/**
 * The nozzle temperature that a table is for: the one asked for, else by the policy: of the tested temperatures that
 * with the largest flow (the coolest of equals) or the lowest, or one that the policy fixes. `tested` has at least one
 * limit, the coolest first. Problem: a policy whose text is no temperature.
 */
export function chooseTemperature(
  { policy }: Pairing,
  tested: readonly MeltLimit[],
  asked?: DegreesCelsius,
): Result<ChosenTemperature, Problem<'unusablePolicy'>> {
  if (asked !== undefined) return success({ value: asked, by: 'as asked for' });
  const rule = policy.data.nozzleTemperature ?? 'largestFlow';
  const by = `by policy "${policy.id}"`;
  const [coolest] = tested;
  if (coolest === undefined) return noTemperature(policy.id, rule);
  if (rule === 'lowestTested') {
    return success({ value: coolest.nozzleTemperature, by: `the lowest that was tested, ${by}` });
  }
  if (rule === 'largestFlow') {
    return success({
      value: largest(tested, coolest).nozzleTemperature,
      by: `of those tested the one with the largest flow, ${by}`,
    });
  }
  const fixed = parseQuantity(rule, 'temperature');
  return fixed.ok ? success({ value: fixed.value.value, by: `fixed ${by}` }) : noTemperature(policy.id, rule);
}

function largest(tested: readonly MeltLimit[], first: MeltLimit): MeltLimit {
  return tested.reduce((best, limit) => (usableValue(limit) > usableValue(best) ? limit : best), first);
}

function noTemperature(policy: string, rule: string) {
  return refusal(
    'unusablePolicy',
    `The policy "${policy}" cannot be used: "${rule}" is no nozzle temperature`,
    'Write largestFlow, lowestTested, or a temperature such as 230 Cel.',
  );
}
