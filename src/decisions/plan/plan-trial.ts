import type { MethodName } from '../../bench/method.ts';
import { type FittedPairing, findFittedPairing } from '../../knowledge/pairing.ts';
import type { Registry } from '../../registry/registry.ts';
import { failure, type Result } from '../../result.ts';
import { nearestWord } from '../../text/nearest-word.ts';
import { quote } from '../../text/quote.ts';
import type { BenchPlan } from './bench-plan.ts';
import { planContourLadder } from './plan-contour-ladder.ts';
import { planDiameterSurvey } from './plan-diameter-survey.ts';
import { planDryingCurve } from './plan-drying-curve.ts';
import { planFlowLadder } from './plan-flow-ladder.ts';
import { planLayerTime } from './plan-layer-time.ts';
import { planReferencePrint } from './plan-reference-print.ts';
import type { PlanRequest } from './plan-request.ts';
import { planSoundLevel } from './plan-sound-level.ts';
import { planTemperatureSweep } from './plan-temperature-sweep.ts';

type Planner = (
  registry: Registry,
  pairing: FittedPairing,
  request: PlanRequest,
) => Result<BenchPlan, string>;

const planners: Readonly<Record<MethodName, Planner>> = {
  flowLadder: planFlowLadder,
  diameterSurvey: planDiameterSurvey,
  temperatureSweep: planTemperatureSweep,
  contourLadder: planContourLadder,
  layerTime: planLayerTime,
  dryingCurve: planDryingCurve,
  soundLevel: planSoundLevel,
  referencePrint: planReferencePrint,
};

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

function isPlanned(method: string): method is MethodName {
  return Object.hasOwn(planners, method);
}

function unknownMethod(method: string): string {
  const nearest = nearestWord(method, plannedMethods);
  const hint = nearest === null ? `There are: ${plannedMethods.join(', ')}.` : `Did you mean "${nearest}"?`;
  return `There is no bench method "${quote(method)}" to plan. ${hint}`;
}
