import { nearestWord } from '../registry/nearest-word.ts';
import { quote } from '../registry/quote.ts';
import type { Registry } from '../registry/registry.ts';
import { failure, type Result } from '../result.ts';
import { findFittedPairing } from '../tables/pairing.ts';
import type { BenchPlan } from './bench-plan.ts';
import { planFlowLadder } from './plan-flow-ladder.ts';
import type { PlanRequest } from './plan-request.ts';

const planners = { flowLadder: planFlowLadder } as const;

/** The bench methods that can be planned. */
export const plannedMethods: readonly string[] = Object.keys(planners);

/**
 * Lays out the next run of a bench method for a machine and a filament: what is expected and why, the settings step by
 * step, what it takes, the cautions, and the empty trial. The error is a sentence for the user: an unknown id, a strand
 * that does not fit, temperatures that nothing allows.
 */
export function planTrial(registry: Registry, request: PlanRequest): Result<BenchPlan, string> {
  const method = request.method ?? 'flowLadder';
  if (!isPlanned(method)) return failure(unknownMethod(method));
  const pairing = findFittedPairing(registry, request);
  return pairing.ok ? planners[method](registry, pairing.value, request) : pairing;
}

function isPlanned(method: string): method is keyof typeof planners {
  return Object.hasOwn(planners, method);
}

function unknownMethod(method: string): string {
  const nearest = nearestWord(method, plannedMethods);
  const hint = nearest === null ? `There are: ${plannedMethods.join(', ')}.` : `Did you mean "${nearest}"?`;
  return `There is no bench method "${quote(method)}" to plan. ${hint}`;
}
