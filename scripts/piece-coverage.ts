/**
 * What feeding piece by piece (`plan --after`) reaches against the even ladder that `plan` lays out, over simulated
 * benches: pieces, widths, and how often the 95 % interval holds the true limit, whenever feeding stops.
 * Usage: tsx scripts/piece-coverage.ts [BENCHES] [SEED]
 */
import { compareAtBench } from './pieces/compare-at-bench.ts';
import { comparisonTable } from './pieces/comparison-table.ts';

const count = Number(process.argv[2] ?? 300);
const seed = process.argv[3] ?? 'piece';
const compared = Array.from({ length: count }, (_, index) => compareAtBench(`${seed} ${index}`)).filter(
  (outcome) => outcome !== null,
);
console.log(
  `${compared.length} benches, ${count - compared.length} whose even ladder brackets no limit left out`,
);
for (const row of comparisonTable(compared)) console.log(row);
