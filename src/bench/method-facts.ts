import type { Trial } from '../registry/generated/documents.ts';
import { contourLadderFacts } from './contour-ladder/contour-ladder-facts.ts';
import { diameterSurveyFacts } from './diameter-survey/diameter-survey-facts.ts';
import { dryingCurveFacts } from './drying-curve/drying-curve-facts.ts';
import type { Fact, Facts } from './facts/fact.ts';
import { flowLadderFacts } from './flow-ladder/flow-ladder-facts.ts';
import { motionTimingFacts } from './motion-timing/motion-timing-facts.ts';
import { setPointCheckFacts } from './set-point-check/set-point-check-facts.ts';
import { settingLadderFacts } from './setting-ladder/setting-ladder-facts.ts';
import { soundLevelFacts } from './sound-level/sound-level-facts.ts';
import { temperatureSweepFacts } from './temperature-sweep/temperature-sweep-facts.ts';

/** Name of a bench method, as trials write it. */
export type MethodName = Trial['method'];

/** The facts of each method; apart from the methods, so that the options of a command line do not carry them along. */
const methodFacts: Readonly<Record<MethodName, Facts>> = {
  flowLadder: flowLadderFacts,
  diameterSurvey: diameterSurveyFacts,
  temperatureSweep: temperatureSweepFacts,
  contourLadder: contourLadderFacts,
  layerTime: {},
  dryingCurve: dryingCurveFacts,
  soundLevel: soundLevelFacts,
  referencePrint: {},
  motionTiming: motionTimingFacts,
  settingLadder: settingLadderFacts,
  setPointCheck: setPointCheckFacts,
};

/** Names of the bench methods, in the order in which they are listed. */
export const methodNames = Object.keys(methodFacts) as readonly MethodName[];

/** The method that is meant where none is named. */
export const usualMethod: MethodName = 'flowLadder';

/** Every fact that one of the methods can use. */
export const allFacts: readonly Fact[] = [
  ...new Set(Object.values(methodFacts).flatMap((facts) => Object.values(facts))),
];
