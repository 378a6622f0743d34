/**
 * How often the 95 % intervals of bench methods hold the truth, over simulated benches.
 * Usage: tsx scripts/method-coverage.ts [METHOD] [BENCHES] [FIRST]; benches of other numbers are other benches
 */

import { simulateContour } from './methods/simulate-contour.ts';
import { simulateDiameter } from './methods/simulate-diameter.ts';
import { simulateDrying } from './methods/simulate-drying.ts';
import { simulateLayerTime } from './methods/simulate-layer-time.ts';
import { simulateMotion } from './methods/simulate-motion.ts';
import { simulatePrints } from './methods/simulate-prints.ts';
import { simulateSetPoint } from './methods/simulate-set-point.ts';
import { simulateSetting } from './methods/simulate-setting.ts';
import { simulateSound } from './methods/simulate-sound.ts';
import { simulateSweep } from './methods/simulate-sweep.ts';
import { type Coverage, coverageOf, type Simulate } from './methods/simulated-bench.ts';

const simulations = {
  diameterSurvey: simulateDiameter,
  temperatureSweep: simulateSweep,
  contourLadder: simulateContour,
  layerTime: simulateLayerTime,
  dryingCurve: simulateDrying,
  soundLevel: simulateSound,
  referencePrint: simulatePrints,
  motionTiming: simulateMotion,
  settingLadder: simulateSetting,
  setPointCheck: simulateSetPoint,
} as const satisfies Readonly<Record<string, Simulate>>;

const percent = (value: number, width: number) => `${(100 * value).toFixed(1)} %`.padStart(width);

function line({ kind, quantity, benches, covered, warned, untold, width, bias }: Coverage): string {
  return [
    ...[kind.padEnd(30), quantity.padEnd(28), String(benches).padStart(7)],
    ...[
      percent(covered, 10),
      percent(width, 14),
      percent(bias, 10),
      percent(warned, 10),
      percent(untold, 15),
    ],
  ].join('');
}

const heading = ['kind'.padEnd(30), 'quantity'.padEnd(28), 'benches', '   covered', '  median width']
  .concat(['      bias', '    warned', '  missed untold'])
  .join('');

const [asked, count = '400', first = '0'] = process.argv.slice(2);
for (const [method, simulate] of Object.entries(simulations)) {
  if (asked !== undefined && asked !== method) continue;
  const { refused, rows } = coverageOf(
    method as keyof typeof simulations,
    simulate,
    Number(count),
    Number(first),
  );
  console.log(`${method}: ${count} benches, ${refused} refused`);
  console.log(heading);
  for (const row of rows) console.log(line(row));
}
