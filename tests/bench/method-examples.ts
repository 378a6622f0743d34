import { readFileSync } from 'node:fs';
import type { BenchRun } from '../../src/bench/facts/fact.ts';
import type { MethodName } from '../../src/bench/method-facts.ts';

/** The sheet of the worked example of a method. */
export function exampleSheet(name: MethodName): string {
  const page = readFileSync(new URL(`../../docs/bench/${name}.md`, import.meta.url), 'utf8');
  return /```csv \S+\n([\s\S]*?)```/.exec(page)?.[1] ?? '';
}

/** What is known of the run of each. */
export const exampleRuns: Readonly<Record<MethodName, BenchRun>> = {
  flowLadder: { filamentDiameter: 1.75, density: 1.24e-3, massResolution: 0.01 },
  diameterSurvey: { filamentDiameter: 1.75, lengthResolution: 0.001, lengthAccuracy: 0.004 },
  temperatureSweep: {},
  contourLadder: { acceptedRipple: 0.02, lengthResolution: 0.001 },
  layerTime: {},
  dryingCurve: { residualMoisture: 0.0005, reelMass: 180, massResolution: 0.1 },
  soundLevel: { backgroundLevel: 38, meterClass: 'class2', levelResolution: 0.1 },
  referencePrint: { massResolution: 0.1 },
  motionTiming: { commandedAcceleration: 8000 },
  settingLadder: { acceptedDefect: 0.5 },
  setPointCheck: { checkedPart: 'nozzle', thermometerAccuracy: 1.5 },
};
