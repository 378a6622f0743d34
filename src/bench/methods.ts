import { contourLadder } from './contour-ladder/contour-ladder.ts';
import { layOutContourLadder } from './contour-ladder/lay-out-contour-ladder.ts';
import { diameterSurvey } from './diameter-survey/diameter-survey.ts';
import { layOutDiameterSurvey } from './diameter-survey/lay-out-diameter-survey.ts';
import { dryingCurve } from './drying-curve/drying-curve.ts';
import { layOutDryingCurve } from './drying-curve/lay-out-drying-curve.ts';
import { flowLadder } from './flow-ladder/flow-ladder.ts';
import { layOutFlowLadder } from './flow-ladder/lay-out-flow-ladder.ts';
import { layOutLayerTime } from './layer-time/lay-out-layer-time.ts';
import { layerTime } from './layer-time/layer-time.ts';
import type { LayOut } from './layout/run-layout.ts';
import type { Method } from './method.ts';
import type { MethodName } from './method-facts.ts';
import { layOutMotionTiming } from './motion-timing/lay-out-motion-timing.ts';
import { motionTiming } from './motion-timing/motion-timing.ts';
import type { ReducedResult, TrialResults } from './reduction.ts';
import { layOutReferencePrint } from './reference-print/lay-out-reference-print.ts';
import { referencePrint } from './reference-print/reference-print.ts';
import { layOutSetPointCheck } from './set-point-check/lay-out-set-point-check.ts';
import { setPointCheck } from './set-point-check/set-point-check.ts';
import { layOutSettingLadder } from './setting-ladder/lay-out-setting-ladder.ts';
import { settingLadder } from './setting-ladder/setting-ladder.ts';
import { layOutSoundLevel } from './sound-level/lay-out-sound-level.ts';
import { soundLevel } from './sound-level/sound-level.ts';
import { layOutTemperatureSweep } from './temperature-sweep/lay-out-temperature-sweep.ts';
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
  motionTiming,
  settingLadder,
  setPointCheck,
} as const satisfies Readonly<Record<MethodName, Method>>;

/** How a run of each method is laid out; apart, so that a program that only reduces does not carry it along. */
export const runLayouts: Readonly<Record<MethodName, LayOut>> = {
  flowLadder: layOutFlowLadder,
  diameterSurvey: layOutDiameterSurvey,
  temperatureSweep: layOutTemperatureSweep,
  contourLadder: layOutContourLadder,
  layerTime: layOutLayerTime,
  dryingCurve: layOutDryingCurve,
  soundLevel: layOutSoundLevel,
  referencePrint: layOutReferencePrint,
  motionTiming: layOutMotionTiming,
  settingLadder: layOutSettingLadder,
  setPointCheck: layOutSetPointCheck,
};

/** All bench methods, whatever their facts are. */
export const allMethods: readonly Method[] = Object.values(benchMethods);

export function isMethodName(name: string): name is MethodName {
  return Object.hasOwn(benchMethods, name);
}

/** What the bench methods find out. */
export type ReducedQuantity = {
  [Name in MethodName]: keyof (typeof benchMethods)[Name]['results'];
}[MethodName];

/** Whether readings of a method tell a quantity. */
export function finds(name: MethodName, quantity: ReducedQuantity): boolean {
  return Object.hasOwn(benchMethods[name].results, quantity);
}

/** What a reduction found for a quantity, where it has one result for it. */
export function resultOf({ results }: TrialResults, quantity: ReducedQuantity): ReducedResult | undefined {
  return results.find((result) => result.quantity === quantity);
}

/** The bench method of a name. */
export function methodOf(name: MethodName): Method {
  return benchMethods[name];
}
