import type { MethodName } from '../../src/bench/method-facts.ts';
import { simulateCleanLadder } from './simulate-clean-ladder.ts';
import { simulateContour } from './simulate-contour.ts';
import { simulateDiameter } from './simulate-diameter.ts';
import { simulateDrying } from './simulate-drying.ts';
import { simulateHardLadder } from './simulate-hard-ladder.ts';
import { simulateLayerTime } from './simulate-layer-time.ts';
import { simulateMotion } from './simulate-motion.ts';
import { simulatePrints } from './simulate-prints.ts';
import { simulateSetPoint } from './simulate-set-point.ts';
import { simulateSetting } from './simulate-setting.ts';
import { simulateSound } from './simulate-sound.ts';
import { simulateSweep } from './simulate-sweep.ts';
import type { Simulate } from './simulated-bench.ts';

/** Simulated benches by method; a method with several simulators has one after the other. */
export const simulations = {
  flowLadder: [simulateCleanLadder, simulateHardLadder],
  diameterSurvey: [simulateDiameter],
  temperatureSweep: [simulateSweep],
  contourLadder: [simulateContour],
  layerTime: [simulateLayerTime],
  dryingCurve: [simulateDrying],
  soundLevel: [simulateSound],
  referencePrint: [simulatePrints],
  motionTiming: [simulateMotion],
  settingLadder: [simulateSetting],
  setPointCheck: [simulateSetPoint],
} as const satisfies Readonly<Partial<Record<MethodName, readonly Simulate[]>>>;
