import { contourLadder } from './contour-ladder/contour-ladder.ts';
import { diameterSurvey } from './diameter-survey/diameter-survey.ts';
import { dryingCurve } from './drying-curve/drying-curve.ts';
import { flowLadder } from './flow-ladder/flow-ladder.ts';
import { layerTime } from './layer-time/layer-time.ts';
import type { Method, MethodName } from './method.ts';
import { referencePrint } from './reference-print/reference-print.ts';
import { soundLevel } from './sound-level/sound-level.ts';
import { temperatureSweep } from './temperature-sweep/temperature-sweep.ts';

/** Every bench method by its name. */
export const benchMethods: Readonly<Record<MethodName, Method>> = {
  flowLadder,
  diameterSurvey,
  temperatureSweep,
  contourLadder,
  layerTime,
  dryingCurve,
  soundLevel,
  referencePrint,
};

/** Names of the bench methods. */
export const methodNames: readonly MethodName[] = Object.values(benchMethods).map(({ method }) => method);
