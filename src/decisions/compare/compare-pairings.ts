import { type FittedRequest, findPairing, type PairingProblem } from '../../knowledge/pairing.ts';
import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { failure, type Result } from '../../result.ts';
import {
  type ComparisonTerms,
  compareFigures,
  type FiguresComparisonProblem,
  type JobFigures,
} from './compare-figures.ts';
import type { Comparison } from './comparison.ts';
import { type FiguresProblem, figuresOfPairing } from './figures-of-pairing.ts';
import { currencyProblem } from './hourly-costs.ts';
import type { PairingFigures } from './pairing-figures.ts';

/** A job and the pairings that might print it. */
export interface ComparisonRequest extends ComparisonTerms {
  /** Id of the job. */
  readonly job: string;
  /** Pairings to compare; the others are compared with the first. */
  readonly pairings: readonly FittedRequest[];
  /** Id of the policy; by default the only one of the registry. */
  readonly policy?: string;
}

/** Why pairings cannot be compared. */
export type ComparisonProblem =
  | UnknownProfile<'job'>
  | PairingProblem
  | FiguresProblem
  | FiguresComparisonProblem;

/**
 * Compares pairings on a job: time and what limits it, speed really reached, filament, sound and money. All numbers in
 * canonical units. Problems: an unknown id, a filament that does not fit, or a number that the time model needs and nobody
 * has stated.
 */
export function comparePairings(
  registry: Registry,
  { job: asked, pairings, policy, ...terms }: ComparisonRequest,
): Result<Comparison, ComparisonProblem> {
  const mixed = currencyProblem(terms.hourlyCosts ?? {});
  if (mixed !== null) return failure(mixed);
  const job = findProfile(registry, 'job', asked);
  if (!job.ok) return job;
  const figures: PairingFigures[] = [];
  for (const request of pairings) {
    const pairing = findPairing(registry, { ...request, ...(policy !== undefined && { policy }) });
    if (!pairing.ok) return pairing;
    const known = figuresOfPairing(registry, pairing.value);
    if (!known.ok) return known;
    figures.push(known.value);
  }
  return compareFigures(jobFigures(job.value), figures, terms);
}

/** A job of a registry as a comparison needs it. */
export function jobFigures({ kind, id, data, source }: Profile<'job'>): JobFigures {
  const { name, version, layers, corners, features, invented } = data;
  return {
    ...{ id, name, isInvented: invented === true },
    paths: { layers, features, ...(corners !== undefined && { corners }) },
    input: { kind, id, version, digest: source.digest },
  };
}
