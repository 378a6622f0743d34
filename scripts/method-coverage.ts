/**
 * How often the 95 % intervals of bench methods hold the truth, over simulated benches.
 * Usage: tsx scripts/method-coverage.ts [METHOD] [BENCHES] [FIRST]; benches of other numbers are other benches
 */

import { type Coverage, coverageOf } from './methods/simulated-bench.ts';
import { simulations } from './methods/simulations.ts';

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
for (const [method, simulators] of Object.entries(simulations)) {
  if (asked !== undefined && asked !== method) continue;
  for (const simulate of simulators) {
    const name = method as keyof typeof simulations; // Object.entries widens to string
    const { refused, rows } = coverageOf(name, simulate, Number(count), Number(first));
    console.log(`${method}: ${count} benches, ${refused} refused`);
    console.log(heading);
    for (const row of rows) console.log(line(row));
  }
}
