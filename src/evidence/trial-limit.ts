import { finds, resultOf } from '../bench/methods.ts';
import type { Profile } from '../registry/profile.ts';
import type { CubicMillimetresPerSecond } from '../units/canonical.ts';
import type { EvidenceContext } from './evidence-context.ts';

/** What the readings of a ladder leave possible for the flow limit; open where the ladder does not bracket it. */
interface TrialLimit {
  readonly value: CubicMillimetresPerSecond;
  readonly low: CubicMillimetresPerSecond;
  readonly high: CubicMillimetresPerSecond;
}

/** The flow limit that the readings of a trial give; null where they tell none. */
export function trialLimit({ id, data }: Profile<'trial'>, { reduce }: EvidenceContext): TrialLimit | null {
  if (!finds(data.method, 'meltFlow')) return null;
  const reduced = reduce(id);
  const result = reduced.ok ? resultOf(reduced.value, 'meltFlow') : undefined;
  if (result === undefined) return null;
  const { value, censored, interval } = result;
  if (censored === 'above') return { value, low: value, high: Number.POSITIVE_INFINITY };
  if (censored === 'below') return { value, low: 0, high: value };
  return { value, low: interval.low ?? value, high: interval.high ?? value };
}
