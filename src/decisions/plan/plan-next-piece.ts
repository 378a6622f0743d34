import type { BenchProblem } from '../../bench/bench-problem.ts';
import { flowLadder } from '../../bench/flow-ladder/flow-ladder.ts';
import { type FedPieces, layOutNextPiece } from '../../bench/flow-ladder/next-piece/lay-out-next-piece.ts';
import type { PlanProblem } from '../../bench/layout/plan-problem.ts';
import { trialResults } from '../../bench/reduce-trial.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import { type FittedProblem, findFittedPairing } from '../../knowledge/pairing.ts';
import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import type { Profile } from '../../registry/profile.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { failure, type Result, success } from '../../result.ts';
import type { Fraction } from '../../units/canonical.ts';
import type { BenchPlan } from './bench-plan.ts';
import type { PlanRequest } from './plan-request.ts';
import { layoutRequest } from './plan-trial.ts';
import { putTogether } from './put-together.ts';

/** Which ladder is fed, and how narrow its interval shall become. */
export interface NextPieceRequest extends Omit<PlanRequest, 'method' | 'subject'> {
  /** Width of the 95 % interval at which to stop, as a share of the limit; by default that of the policy, else 5 %. */
  readonly intervalWidth?: Fraction;
  /** Id of the policy; by default the only one of the registry, if it holds just one. */
  readonly policy?: string;
  /** Id of the trial whose pieces these are, where the registry holds it: what is expected rests on others then. */
  readonly trial?: string;
}

/** Width that is asked of an interval where nobody says another (common practice, no source). */
const usualWidth = 0.05;

/**
 * What to feed next of a flow ladder, given what has been weighed so far: one row, or none where feeding may stop. Outer
 * problems: an unknown id, a filament that does not fit, temperatures that nothing allows; inner ones are those of the
 * readings.
 */
export function planNextPiece(
  registry: Registry,
  request: NextPieceRequest,
  fed: FedPieces,
  reduce: ReduceById = (id) => trialResults(registry, id),
): Result<
  Result<BenchPlan, readonly BenchProblem[]>,
  PlanProblem | FittedProblem | UnknownProfile<'policy'>
> {
  const pairing = findFittedPairing(registry, request);
  if (!pairing.ok) return pairing;
  const policy = policyOf(registry, request.policy);
  if (!policy.ok) return policy;
  const rules = policy.value?.data;
  const trials = new Set(request.trial === undefined ? [] : [request.trial]);
  const others: ReduceById = (id) => (id === request.trial ? failure([itself]) : reduce(id));
  const layout = layOutNextPiece(
    layoutRequest(registry, pairing.value, request, others, trials),
    { ...(rules !== undefined && { acceptedDeficit: rules.acceptedDeficit }), ...fed },
    askedWidth(request, policy.value),
  );
  if (!layout.ok) return layout;
  if (!layout.value.ok) return success(layout.value);
  const plan = { method: flowLadder, layout: layout.value.value, date: request.today, trials };
  return success(success(putTogether(registry, pairing.value, plan)));
}

/** A ladder says nothing of what to expect of itself. */
const itself: BenchProblem = {
  code: 'unknownTrial',
  message: 'the trial that is being fed counts by its pieces',
  help: 'name another trial',
};

function policyOf(
  registry: Registry,
  asked: string | undefined,
): Result<Profile<'policy'> | null, UnknownProfile<'policy'>> {
  const [first, ...others] = idsOf(registry, 'policy');
  const id = asked ?? (others.length === 0 ? first : undefined);
  return id === undefined ? success(null) : findProfile(registry, 'policy', id);
}

function askedWidth({ intervalWidth }: NextPieceRequest, policy: Profile<'policy'> | null) {
  if (intervalWidth !== undefined) return { share: intervalWidth, by: 'as asked' };
  const ofPolicy = policy?.data.intervalWidth;
  return ofPolicy === undefined
    ? { share: usualWidth, by: 'common practice, no source' }
    : { share: ofPolicy, by: `policy ${policy?.id}` };
}
