import { contourLadder } from './contour-ladder/contour-ladder.ts';
import { diameterSurvey } from './diameter-survey/diameter-survey.ts';
import { dryingCurve } from './drying-curve/drying-curve.ts';
import type { Fact } from './facts/fact.ts';
import { flowLadder } from './flow-ladder/flow-ladder.ts';
import { layerTime } from './layer-time/layer-time.ts';
import type { Method, MethodName } from './method.ts';
import { referencePrint } from './reference-print/reference-print.ts';
import { soundLevel } from './sound-level/sound-level.ts';
import { temperatureSweep } from './temperature-sweep/temperature-sweep.ts';

/** Every bench method by its name. */
export const benchMethods = {
  flowLadder,
  diameterSurvey,
  temperatureSweep,
  contourLadder,
  layerTime,
  dryingCurve,
  soundLevel,
  referencePrint,
} as const satisfies Readonly<Record<MethodName, Method>>;

/** All bench methods, whatever their facts are. */
export const allMethods: readonly Method[] = Object.values(benchMethods);

/** Every fact that one of them can use. */
export const allFacts: readonly Fact[] = [
  ...new Set(allMethods.flatMap(({ facts }) => Object.values(facts))),
];

/** Names of the bench methods. */
export const methodNames: readonly MethodName[] = allMethods.map(({ method }) => method);

/** The bench method of a name. */
export function methodOf(name: MethodName): Method {
  return benchMethods[name];
}
