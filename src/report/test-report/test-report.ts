import { readingsDigest } from '../../bench/adopt/readings-digest.ts';
import type { BenchProblem } from '../../bench/bench-problem.ts';
import { methodOf } from '../../bench/methods.ts';
import { type ReductionInputs, reduceTrial, reductionQuestion } from '../../bench/reduce-trial.ts';
import type { ReducedResult, Reduction } from '../../bench/reduction.ts';
import { type ClaimReport, judgeClaims } from '../../decisions/claims/judge-claims.ts';
import { type Origin, originOf } from '../../knowledge/origin.ts';
import type { UnknownProfile } from '../../registry/find-profile.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Result, success } from '../../result.ts';
import type { ReportDetails } from './report-details.ts';

/** What a test report is asked for. */
export interface ReportRequest {
  readonly trial: string;
  readonly details: ReportDetails;
  /** Day of issue, YYYY-MM-DD, by which evidence is judged too. */
  readonly today: string;
  /** Policy whose decision rule counts; by default the only one of the registry. */
  readonly policy?: string;
}

/** All that a test report states about one trial. */
export interface TestReport {
  readonly trial: Profile<'trial'>;
  /** Tells this run and these readings from every other: `ID, readings DIGEST`. */
  readonly identity: string;
  readonly details: ReportDetails;
  readonly issued: string;
  readonly reduction: Reduction;
  readonly inputs: ReductionInputs;
  /** The claims of the machine that this trial decides; null where it names no machine that is known. */
  readonly claims: ClaimReport | null;
  readonly origin: Origin;
}

/** Gathers what a test report says. Problems: those of the reduction, an unknown policy. */
export function testReport(
  registry: Registry,
  { trial: id, details, today, policy }: ReportRequest,
): Result<TestReport, readonly BenchProblem[] | UnknownProfile<'machine' | 'policy'>> {
  const question = reductionQuestion(registry, id);
  if (!question.ok) return question;
  const reduction = reduceTrial(registry, id);
  if (!reduction.ok) return reduction;
  const trial = registry.trial.get(id);
  if (trial === undefined) throw new Error(`the trial ${id} was reduced, but is not in the registry`);
  const { machine, filament } = trial.data;
  const judged =
    machine === undefined || !registry.machine.has(machine)
      ? success(null)
      : judgeClaims(registry, machine, { today, ...(policy !== undefined && { policy }) });
  if (!judged.ok) return judged;
  const digest = readingsDigest(trial);
  return success({
    trial,
    identity: digest === null ? id : `${id}, readings ${digest}`,
    details,
    issued: today,
    reduction: reduction.value,
    inputs: question.value.inputs,
    claims: judged.value === null ? null : decidedBy(id, judged.value),
    origin: originOf(registry, {
      profiles: [
        ...(machine === undefined ? [] : [{ kind: 'machine' as const, id: machine }]),
        { kind: 'filament', id: filament },
      ],
      trials: [id],
    }),
  });
}

/** Of the claims of a machine those that one trial decides: the evidence that is named first. */
function decidedBy(trial: string, report: ClaimReport): ClaimReport {
  const claims = report.claims.filter(({ evidence }) => evidence[0]?.trial === trial);
  return { ...report, claims };
}

/** Half of the width of the 95 % coverage interval: the expanded uncertainty; null for a bound. */
export function expandedUncertainty({ interval: { low, high } }: ReducedResult): number | null {
  return low === null || high === null ? null : (high - low) / 2;
}

/** Name of the method for people, and the page that describes it. */
export function methodPage({ trial }: TestReport): string {
  return `docs/bench/${methodOf(trial.data.method).method}.md`;
}
