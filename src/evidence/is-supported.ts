import { statedRounding } from '../bench/adopt/stated-digits.ts';
import { resultOf } from '../bench/methods.ts';
import { restsOnTrial } from '../knowledge/rests-on-trial.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { EvidenceContext } from './evidence-context.ts';

/** Whether a flow limit rests on no trial, or is not above what the readings of its trial give. */
export function isSupported(limit: Statement<number>, { registry, reduce }: EvidenceContext): boolean {
  if (limit.evidence === undefined || !restsOnTrial(limit, registry)) return true;
  const reduced = reduce(limit.evidence);
  const result = reduced.ok ? resultOf(reduced.value, 'meltFlow') : undefined;
  return result !== undefined && limit.value <= result.value * (1 + statedRounding);
}
