/**
 * How often the 95 % interval of a reduced flow ladder holds the true limit, over simulated ladders.
 * Usage: npm run coverage -- [LADDERS] [SEED], or --class NAME|all [LADDERS] [SEED] for ladders that go another way
 */
import type { ReducedResult } from '../src/bench/reduction.ts';
import { quantile, sortedDraws } from '../src/statistics/coverage-interval.ts';
import { describe } from '../src/statistics/describe.ts';
import { printClassCoverage } from './class-coverage.ts';
import { reducedLadder } from './methods/reduced-ladder.ts';
import { type SimulatedLadder, simulateLadder } from './simulate-ladder.ts';

interface Outcome {
  readonly ladder: SimulatedLadder;
  readonly result: ReducedResult;
}

function reduce(ladder: SimulatedLadder): ReducedResult {
  const reduced = reducedLadder(ladder);
  const result = reduced.ok ? reduced.value.results[0] : undefined;
  if (result === undefined) throw new Error(`a simulated ladder was refused: ${JSON.stringify(reduced)}`);
  return result;
}

const covers = ({ low, high }: ReducedResult['interval'], limit: number) =>
  low !== null && high !== null && low <= limit && limit <= high;

/** The strata that an outcome counts in; those of one group are printed together. */
function strataOf({ ladder: { traits, tolerance, scaleResolution } }: Outcome): string[] {
  const { repeats, relativeStep, relativeWidth, onset } = traits;
  const step =
    relativeStep < 0.09 ? '1 fine, below 9 %' : relativeStep < 0.2 ? '2 medium' : '3 coarse, 20 % and more';
  const width =
    relativeWidth < 0.07 ? '1 sharp, below 7 %' : relativeWidth < 0.16 ? '2 medium' : '3 soft, 16 % and more';
  return [
    `step ${step}`,
    `step and repeats ${step.slice(0, 6)} ${repeats}`,
    `repeats ${repeats}`,
    `onset width ${width}`,
    `onset ${onset}`,
    `tolerance ${tolerance.toFixed(2)}`,
    `scale ${scaleResolution} g`,
    'total',
  ];
}

function line(name: string, outcomes: readonly Outcome[]): string {
  const share =
    outcomes.filter(({ ladder, result }) => covers(result.interval, ladder.limit)).length / outcomes.length;
  const errors = sortedDraws(outcomes.map(({ ladder, result }) => result.value / ladder.limit - 1));
  const widths = outcomes.map(
    ({ result: { interval, value } }) => ((interval.high ?? 0) - (interval.low ?? 0)) / value,
  );
  const percent = (value: number, width: number) => `${(100 * value).toFixed(2)} %`.padStart(width);
  return [
    name.padEnd(34),
    String(outcomes.length).padStart(5),
    percent(share, 11),
    percent(quantile(errors, 0.5), 14),
    percent(describe(widths).mean, 12),
  ].join('');
}

function printStrata(count: number, seed: string): void {
  const outcomes = Array.from({ length: count }, (_, index): Outcome => {
    const ladder = simulateLadder(`${seed} ${index}`);
    return { ladder, result: reduce(ladder) };
  });
  const measured = outcomes.filter(({ result }) => result.censored === null);
  const strata = new Map<string, Outcome[]>();
  for (const outcome of measured) {
    for (const stratum of strataOf(outcome)) strata.set(stratum, [...(strata.get(stratum) ?? []), outcome]);
  }
  console.log(`${'stratum'.padEnd(34)} runs    covered  median error  mean width`);
  for (const [name, members] of [...strata].sort(([one], [other]) => (one < other ? -1 : 1))) {
    console.log(line(name, members));
  }
  const highest = ({ rows }: SimulatedLadder) => Math.max(...rows.map(([flow]) => flow));
  const beyond = outcomes.filter(({ ladder }) => ladder.limit > highest(ladder));
  const falsely = outcomes.filter(
    ({ ladder, result }) => result.censored !== null && ladder.limit <= highest(ladder),
  );
  const noFlow = measured.filter(({ ladder, result }) => covers(result.interval, ladder.limitAgainstNoFlow));
  const open = beyond.filter(({ result }) => result.censored === 'above');
  console.log(
    `limits beyond the highest step: ${beyond.length}, reported as such: ${open.length}, falsely: ${falsely.length}`,
  );
  console.log(
    `covered if the deficit counts from no flow instead: ${((100 * noFlow.length) / measured.length).toFixed(2)} %`,
  );
}

const words = process.argv.slice(2);
const [asked] = words[0] === '--class' ? words.splice(0, 2).slice(1) : [];
const [count = '1200', seed = 'coverage'] = words;
if (asked === undefined) printStrata(Number(count), seed);
else printClassCoverage(asked, Number(count), seed);
