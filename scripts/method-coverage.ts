/**
 * How often the 95 % intervals of bench methods hold the truth, over simulated benches.
 * Usage: tsx scripts/method-coverage.ts [METHOD] [BENCHES]
 */

import { simulateMotion } from './methods/simulate-motion.ts';
import { simulateSetPoint } from './methods/simulate-set-point.ts';
import { simulateSetting } from './methods/simulate-setting.ts';
import { type Coverage, coverageOf, type Simulate } from './methods/simulated-bench.ts';

const simulations = {
  motionTiming: simulateMotion,
  settingLadder: simulateSetting,
  setPointCheck: simulateSetPoint,
} as const satisfies Readonly<Record<string, Simulate>>;

const percent = (value: number, width: number) => `${(100 * value).toFixed(1)} %`.padStart(width);

function line({ kind, quantity, benches, covered, warned, width }: Coverage): string {
  return [
    ...[kind.padEnd(24), quantity.padEnd(28), String(benches).padStart(7)],
    ...[percent(covered, 10), percent(width, 14), percent(warned, 10)],
  ].join('');
}

const [asked, count = '400'] = process.argv.slice(2);
for (const [method, simulate] of Object.entries(simulations)) {
  if (asked !== undefined && asked !== method) continue;
  const { refused, rows } = coverageOf(method as keyof typeof simulations, simulate, Number(count));
  console.log(`${method}: ${count} benches, ${refused} refused`);
  console.log(`${'kind'.padEnd(24)}${'quantity'.padEnd(28)}benches   covered  median width    warned`);
  for (const row of rows) console.log(line(row));
}
