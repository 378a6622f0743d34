import { usualMassResolution } from '../../bench/facts/instrument-facts.ts';
import { nozzleKey } from '../../bench/facts/trial-key.ts';
import type { LayoutRequest } from '../../bench/layout/layout-request.ts';
import type { PlanProblem } from '../../bench/layout/plan-problem.ts';
import { methodNames, usualMethod } from '../../bench/method-facts.ts';
import { isMethodName, methodOf, runLayouts } from '../../bench/methods.ts';
import { trialResults } from '../../bench/reduce-trial.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import { familiesOf } from '../../knowledge/families.ts';
import { type FittedPairing, type FittedProblem, findFittedPairing } from '../../knowledge/pairing.ts';
import { nozzleWindow } from '../../prediction/nozzle-window.ts';
import { predictLimit } from '../../prediction/predict-limit.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import type { BenchPlan } from './bench-plan.ts';
import { expectedFlow } from './expected-flow.ts';
import type { PlanRequest } from './plan-request.ts';
import { planTemperature } from './plan-temperature.ts';
import { putTogether } from './put-together.ts';

/**
 * Lays out the next run of a bench method for a machine and a filament: what is expected and why, the settings step by
 * step, what it takes, the cautions, and the empty trial. Problems: an unknown id, a filament
 * that does not fit, temperatures that nothing allows.
 */
export function planTrial(
  registry: Registry,
  request: PlanRequest,
  reduce: ReduceById = (id) => trialResults(registry, id),
): Result<BenchPlan, PlanProblem | FittedProblem | Problem<'unknownMethod'>> {
  const name = request.method ?? usualMethod;
  if (!isMethodName(name)) return unknownMethod(name);
  const method = methodOf(name);
  const needsNozzle = method.requiredKeys.includes(nozzleKey);
  const pairing = findFittedPairing(registry, request, { anyNozzle: !needsNozzle });
  if (!pairing.ok) return pairing;
  const shownTrials = new Set<string>();
  const layout = runLayouts[name](layoutRequest(registry, pairing.value, request, reduce, shownTrials));
  if (!layout.ok) return layout;
  const plan = { method, layout: layout.value, date: request.today, trials: shownTrials };
  return success(putTogether(registry, pairing.value, plan));
}

/**
 * What a method is handed; it asks for predictions itself, since not every method needs each of them. The trials that a
 * prediction shows are put among those given.
 */
export function layoutRequest(
  registry: Registry,
  pairing: FittedPairing,
  request: PlanRequest,
  reduce: ReduceById,
  shownTrials: Set<string>,
): LayoutRequest {
  const families = familiesOf(pairing.filament.data, registry);
  const allowedTemperatures = () => nozzleWindow(pairing, families);
  return {
    registry,
    pairing,
    families,
    ...(request.subject !== undefined && { subject: request.subject }),
    massResolution: request.resolution ?? usualMassResolution,
    allowedTemperatures,
    nozzleTemperature: () => {
      const allowed = allowedTemperatures();
      return allowed.ok ? planTemperature(pairing, allowed.value, request.nozzleTemperature) : allowed;
    },
    expectedFlow: (nozzleTemperature) => {
      const { hotEnd, nozzle, filament } = pairing;
      const setup = { hotEnd, nozzle, filament: filament.data, families, nozzleTemperature };
      const predicted = predictLimit(registry, pairing, setup, reduce);
      if (!predicted.ok) return predicted;
      for (const { id } of predicted.value.siblings) shownTrials.add(id);
      return success(expectedFlow(predicted.value));
    },
  };
}

function unknownMethod(method: string) {
  return refusal(
    'unknownMethod',
    `There is no bench method "${quote(method)}" to plan`,
    wordHint(method, methodNames),
  );
}
