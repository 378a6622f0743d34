import { methodOf } from '../../bench/methods.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import type { ReducedResult } from '../../bench/reduction.ts';
import { sameRuns } from '../../evidence/same-runs.ts';
import { wordsOf } from '../../text/words.ts';
import { shown } from '../../units/wording.ts';
import { allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Standard uncertainties of a difference beyond which chance is no explanation, over the 1.96 of a 95 % interval. */
const beyondJoint = 3 / 1.96;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'Two trials of the same pairing under the same conditions agree within their joint uncertainty.',
  rationale:
    'Where they do not, one of them was run with something else than it says, or has a wrong reading; a table would rely on the lower one without knowing.',
  source:
    'ISO 13528:2022, 9.6 (from memory): a difference of two results against their uncertainties; three standard uncertainties are common practice, no source.',
  formula: '|x1 - x2| <= (3/1.96) sqrt(U1^2 + U2^2), U half of the 95 % interval on the side of the other',
  example: {
    kind: 'trial',
    copied: true,
    bad: `
id: wren-clover-petg-245-again${ladder(allFlows, { times: 0.8, apart: 0.002 })}
events:
  - {event: halted, commandedFlow: 28 mm3/s}`,
    good: `
id: wren-clover-petg-245-other
batch: 26-0009${ladder(allFlows, { times: 0.8, apart: 0.002 })}
events:
  - {event: halted, commandedFlow: 28 mm3/s}`,
  },
  *check(profile, context) {
    for (const other of sameRuns(profile, context.registry)) {
      for (const [own, before] of pairsOfResults(profile.id, other.id, context.reduce)) {
        if (agree(own, before) || isFarOff(own, before)) continue;
        const text = (result: ReducedResult) => shown(result.value, result.dimension);
        yield {
          path: ['observations'],
          part: 'key',
          message: `The readings give ${text(own)} for the ${wordsOf(own.quantity)}, and those of "${other.id}", run under the same conditions, ${text(before)}: further apart than their intervals allow`,
          found: text(own),
          allowed: `within the joint uncertainty of both, near ${text(before)}`,
          help: 'Compare both with their bench sheets: batch, nozzle, temperature, units and flows. If both are right, something changed in between that the trials do not say: state it, or repeat the run.',
        };
        return;
      }
    }
  },
};

/** Flow limits that differ by more than that are found as far from those of similar trials. */
const ofSimilarTrials = 2.5;

function isFarOff(one: ReducedResult, other: ReducedResult): boolean {
  const ratio = one.value / other.value;
  return one.quantity === 'meltFlow' && Math.max(ratio, 1 / ratio) > ofSimilarTrials;
}

/** The results of two trials that profiles can state, each with the one that it answers. */
function pairsOfResults(
  one: string,
  other: string,
  reduce: ReduceById,
): (readonly [ReducedResult, ReducedResult])[] {
  const [own, before] = [reduce(one), reduce(other)];
  if (!own.ok || !before.ok) return [];
  const stated = new Set(methodOf(own.value.method).adoptable.map(({ quantity }) => quantity));
  return own.value.results
    .filter(({ quantity }) => stated.has(quantity))
    .flatMap((result) => {
      const same = before.value.results.find(
        ({ quantity, at }) => quantity === result.quantity && at?.acceleration === result.at?.acceleration,
      );
      return same === undefined ? [] : [[result, same] as const];
    });
}

/** Whether two results may be of one truth; a bound agrees with all on its open side. */
function agree(one: ReducedResult, other: ReducedResult): boolean {
  const [lower, higher] = one.value <= other.value ? [one, other] : [other, one];
  if (lower.censored === 'above' || higher.censored === 'below') return true;
  const up = (lower.interval.high ?? lower.value) - lower.value;
  const down = higher.value - (higher.interval.low ?? higher.value);
  return higher.value - lower.value <= beyondJoint * Math.hypot(up, down);
}
