/**
 * The ends of the flow ladders' 95 % intervals as they are integrated, against a long run of the sampler that was used
 * before, in per cent of the interval's width; and what both cost. With --referee, ladders that differ by more than
 * 2 % are looked at by draws from the prior too, which take a minute or so each.
 * Usage: npm run compare-samplers [-- --referee] [-- PARTICLES]
 */
import { ladderPosterior } from '../src/bench/flow-ladder/ladder-posterior.ts';
import { limitDistribution } from '../src/bench/flow-ladder/limit-distribution.ts';
import { possibleCurves as integratedCurves } from '../src/bench/flow-ladder/possible-curves.ts';
import { quantile, sortedDraws } from '../src/statistics/coverage-interval.ts';
import { randomSource } from '../src/statistics/random.ts';
import { possibleCurves, usualEffort } from './reference/ladder-posterior.ts';
import { type ReferenceLadder, referenceLadders } from './reference/ladders.ts';
import { refereedQuantiles } from './reference/prior-referee.ts';

const withReferee = process.argv.includes('--referee');
const particles = Number(process.argv.slice(2).find((word) => /^\d+$/.test(word)) ?? 3000);
const refereeDraws = 3_000_000;
const mostDifferent = 0.02;
const ends = [0.025, 0.975];

const longEffort = { ...usualEffort, startingDraws: 10 * particles, particles, finalRounds: 10 };
const firstFlow = ({ bench }: ReferenceLadder) => bench.steps[0]?.flow ?? Number.NaN;

function integrated(ladder: ReferenceLadder): (probability: number) => number {
  const posterior = ladderPosterior(ladder.bench, ladder.tolerance);
  integratedCurves(posterior, firstFlow(ladder));
  return limitDistribution(posterior, firstFlow(ladder));
}

function sampled({ bench, tolerance }: ReferenceLadder, seed: string, effort = usualEffort): Float64Array {
  const curves = possibleCurves(bench, tolerance, randomSource(seed), effort);
  return sortedDraws(curves.map(({ limit }) => limit));
}

/** Processor time in milliseconds. */
function cost(run: () => unknown): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

interface Comparison {
  readonly ladder: ReferenceLadder;
  readonly quantileAt: (probability: number) => number;
  readonly width: number;
  /** Of the lower and the upper end, as shares of the width. */
  readonly differences: readonly number[];
}

function compare(ladder: ReferenceLadder): Comparison {
  const quantileAt = integrated(ladder);
  const limits = sampled(ladder, 'long', longEffort);
  const [low = Number.NaN, high = Number.NaN] = ends.map((end) => quantile(limits, end));
  const width = high - low;
  const differences = ends.map((end) => (quantileAt(end) - quantile(limits, end)) / width);
  return { ladder, quantileAt, width, differences };
}

const percent = (share: number) => (100 * share).toFixed(2).padStart(8);
const isDifferent = ({ differences }: Comparison) =>
  differences.some((difference) => Math.abs(difference) > mostDifferent);

/** How far the integral's ends are from the referee's, each with the referee's standard error. */
function refereed({ ladder, quantileAt, width }: Comparison): string {
  const reach = 0.6 * (quantileAt(0.995) - quantileAt(0.005));
  const range = { low: quantileAt(0.005) - reach, high: quantileAt(0.995) + reach };
  const found = refereedQuantiles(ladder.bench, ladder.tolerance, range, refereeDraws, ends);
  return found
    .map(({ value, standardError }, index) => {
      const difference = (quantileAt(ends[index] ?? Number.NaN) - value) / width;
      return `${percent(difference)} ± ${((100 * standardError) / width).toFixed(2)}`;
    })
    .join('  ');
}

const ladders = referenceLadders();
// Each in a pass of its own: what one leaves to the garbage collector is no cost of the other. First to warm up.
for (const ladder of ladders) integrated(ladder);
const own = ladders.map((ladder) => cost(() => integrated(ladder)));
const reference = ladders.map((ladder) => cost(() => sampled(ladder, 'flowLadder')));
const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);

console.log('Ends of the 95 % interval, integrated less sampled, in % of the width; processor time\n');
console.log(
  `${'ladder'.padEnd(34)}   lower    upper      ratio${withReferee ? '   against the referee' : ''}`,
);
const comparisons = ladders.map((ladder, index) => {
  const comparison = compare(ladder);
  const ratio = ((own[index] ?? Number.NaN) / (reference[index] ?? Number.NaN)).toFixed(3);
  const asked = withReferee && isDifferent(comparison) ? `  ${refereed(comparison)}` : '';
  const differences = comparison.differences.map(percent).join(' ');
  console.log(`${ladder.id.padEnd(34)}${differences}   ${ratio.padStart(8)}${asked}`);
  return comparison;
});
const largest = comparisons.map(({ differences }) => Math.max(...differences.map(Math.abs)));
console.log(
  `\nlarger end: mean ${percent(sum(largest) / largest.length)} %, largest ${percent(Math.max(...largest))} %; ` +
    `more than 2 %: ${comparisons.filter(isDifferent).length} of ${ladders.length}`,
);
console.log(
  `processor time of all ladders: ${(sum(own) / sum(reference)).toFixed(3)} of the sampler's, ` +
    `${(sum(own) / own.length).toFixed(1)} ms a ladder`,
);
