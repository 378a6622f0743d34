import type { ExpectedFlow } from '../../bench/layout/layout-request.ts';
import type { Prediction } from '../../prediction/prediction.ts';
import { predictionItems, reasonItems } from '../../prediction/prediction-text.ts';
import type { SiblingTrial } from '../../prediction/sibling-trials.ts';
import type { CubicMillimetresPerSecond } from '../../units/canonical.ts';
import { type Amount, amountOf } from '../../units/rounded.ts';

/** A prediction as a bench method takes it: its numbers, and what it rests on in words and for programs. */
export function expectedFlow(prediction: Prediction): ExpectedFlow {
  const { value, range, caps } = prediction;
  return {
    value,
    range,
    highest: Math.min(...caps.map((cap) => cap.flow)),
    items: predictionItems(prediction),
    reasons: reasonItems(prediction),
    facts: predictionFacts(prediction),
  };
}

function predictionFacts(prediction: Prediction): Record<string, unknown> {
  const { from, trials, value, range, cappedBy, siblings, stated, capacity, caps } = prediction;
  return {
    from,
    trials,
    value: flow(value),
    range: { low: flow(range.low), high: flow(range.high) },
    cappedBy: cappedBy?.by ?? null,
    siblings: siblings.map(siblingFacts),
    stated: stated && { basis: stated.basis, value: flow(stated.value), scaled: flow(stated.scaled) },
    conduction: capacity && flow(capacity.flow),
    caps: caps.map((cap) => ({ by: cap.by, flow: flow(cap.flow), text: cap.text })),
  };
}

function siblingFacts({ id, kinship, limit, scaled, spread }: SiblingTrial): Record<string, unknown> {
  return {
    trial: id,
    kinship,
    measured: flow(limit.value),
    censored: limit.censored,
    scaled: flow(scaled),
    range: { low: flow(scaled / spread), high: flow(scaled * spread) },
  };
}

function flow(value: CubicMillimetresPerSecond): Amount {
  return amountOf(value, 'mm3/s');
}
