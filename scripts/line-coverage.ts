/**
 * How often the 95 % band of a line of limits against temperature holds the truth, over simulated ladders whose true scatter is
 * what their intervals say, or several times that.
 * Usage: tsx scripts/line-coverage.ts [LINES] [SEED]
 */
import { lineCoverage } from './methods/simulate-line.ts';

const [lines = '4000', seed = 'line coverage'] = process.argv.slice(2);
const percent = (value: number) => `${(100 * value).toFixed(1)} %`.padStart(10);

console.log(`${'kind'.padEnd(52)}   covered   widened    times as wide as the intervals alone`);
for (const ladders of [2, 3, 4, 5, 6, 8]) {
  for (const scatter of [1, 1.5, 2, 2.5, 3]) {
    for (const extra of ['every interval is too short', 'runs differ'] as const) {
      if (scatter === 1 && extra === 'runs differ') continue;
      const { kind, covered, warned, wider } = lineCoverage({ ladders, scatter, extra }, Number(lines), seed);
      console.log(`${kind.padEnd(52)}${percent(covered)}${percent(warned)}${wider.toFixed(2).padStart(10)}`);
    }
  }
}
