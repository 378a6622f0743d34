import { contourLadder } from './contour-ladder.ts';
import { diameterSurvey } from './diameter-survey.ts';
import { dryingCurve } from './drying-curve.ts';
import { flowLadder } from './flow-ladder.ts';
import { layerTime } from './layer-time.ts';
import type { Method, MethodName } from './method.ts';
import { referencePrint } from './reference-print.ts';
import { soundLevel } from './sound-level.ts';
import { temperatureSweep } from './temperature-sweep.ts';

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
