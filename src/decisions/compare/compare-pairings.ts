import { originOf } from '../../knowledge/origin.ts';
import {
  type FittedRequest,
  findPairing,
  type Pairing,
  type PairingProblem,
} from '../../knowledge/pairing.ts';
import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import type { TableInput } from '../../tables/derive/speed-table.ts';
import { enumerated } from '../../text/words.ts';
import type { Count, Money } from '../../units/canonical.ts';
import type { Comparison } from './comparison.ts';
import { type EstimateProblem, estimateJob } from './estimate-job.ts';
import { currenciesOf, type HourlyCosts } from './hourly-costs.ts';
import type { JobEstimate } from './job-estimate.ts';
import { modelCheckOf } from './model-check.ts';
import { against } from './saved-hours.ts';
import { speedAnswer } from './speed-answer.ts';

/** A job and the pairings that might print it. */
export interface ComparisonRequest {
  /** Id of the job. */
  readonly job: string;
  /** Pairings to compare; the others are compared with the first. */
  readonly pairings: readonly FittedRequest[];
  /** Id of the policy; by default the only one of the registry. */
  readonly policy?: string;
  /** Number of such jobs over which a difference of price is spread. */
  readonly jobs?: Count;
  /** What an hour is worth. */
  readonly hourValue?: Money;
  /** What an hour of printing costs in power, wear and labour; each given only where it is to count. */
  readonly hourlyCosts?: HourlyCosts;
}

/** Why pairings cannot be compared. */
export type ComparisonProblem =
  | UnknownProfile<'job'>
  | PairingProblem
  | EstimateProblem
  | Problem<'noPairing' | 'severalCurrencies'>;

/**
 * Compares pairings on a job: time and what limits it, speed really reached, filament, sound and money. All numbers in
 * canonical units. Problems: an unknown id, a filament that does not fit, or a number that the time model needs and nobody
 * has stated.
 */
export function comparePairings(
  registry: Registry,
  request: ComparisonRequest,
): Result<Comparison, ComparisonProblem> {
  const { hourlyCosts = {} } = request;
  if (currenciesOf(hourlyCosts).length > 1) return severalCurrencies(hourlyCosts);
  const found = findProfile(registry, 'job', request.job);
  if (!found.ok) return found;
  const job = found.value;
  const pairings: Pairing[] = [];
  const estimates: JobEstimate[] = [];
  for (const asked of request.pairings) {
    const pairing = findPairing(registry, {
      ...asked,
      ...(request.policy !== undefined && { policy: request.policy }),
    });
    if (!pairing.ok) return pairing;
    const estimate = estimateJob(registry, pairing.value, job.data, modelCheckOf(registry, asked.machine));
    if (!estimate.ok) return estimate;
    pairings.push(pairing.value);
    estimates.push(estimate.value);
  }
  const [first, ...others] = estimates;
  const policy = pairings[0]?.policy;
  if (first === undefined || policy === undefined) {
    return refusal('noPairing', 'There is nothing to compare', 'Name at least one pairing.');
  }
  const terms = { jobs: request.jobs ?? null, hourValue: request.hourValue ?? null, hourlyCosts };
  return success({
    job: { id: job.id, name: job.data.name },
    policy: policy.id,
    ...terms,
    answer: speedAnswer(first, others),
    estimates: estimates.map((estimate) => against(first, estimate, terms)),
    inputs: inputsOf(job, pairings),
    origin: originOf(registry, {
      profiles: profilesOf(job, pairings),
      trials: estimates.flatMap(({ trials }) => trials),
    }),
  });
}

/** The documents behind a comparison, each once. */
function inputsOf(job: Profile<'job'>, pairings: readonly Pairing[]): TableInput[] {
  return profilesOf(job, pairings).map(({ kind, id, data, source }) => ({
    kind,
    id,
    version: data.version,
    digest: source.digest,
  }));
}

function profilesOf(job: Profile<'job'>, pairings: readonly Pairing[]) {
  return [
    ...new Set([job, ...pairings.flatMap(({ policy, machine, filament }) => [policy, machine, filament])]),
  ];
}

function severalCurrencies(costs: HourlyCosts) {
  return refusal(
    'severalCurrencies',
    `The costs of an hour are in ${enumerated(currenciesOf(costs))}`,
    'Give all of them in one currency, that of the machine prices.',
  );
}
