import type { BenchRun } from '../../src/bench/facts/fact.ts';
import type { MethodName } from '../../src/bench/method-facts.ts';
import { methodOf } from '../../src/bench/methods.ts';
import type { ReducedResult } from '../../src/bench/reduction.ts';
import { groupedBy } from '../../src/registry/grouped-by.ts';
import type { RandomSource } from '../../src/statistics/random.ts';
import type { Dimension } from '../../src/units/dimension.ts';

/** Readings of an invented bench whose truth is known, to test a reduction against. */
export interface SimulatedBench {
  /** What kind of bench it is, to tabulate by. */
  readonly kind: string;
  /** In canonical units. */
  readonly columns: Readonly<Record<string, readonly number[]>>;
  readonly run: BenchRun;
  /** What is true, by the quantities that the method finds. */
  readonly truths: Readonly<Record<string, number>>;
}

/** Draws the bench of a number; another `noise` is another run at the same bench. */
export type Simulate = (index: number, noise?: RandomSource) => SimulatedBench;

/** How a reduction does over benches of one kind, for one quantity. */
export interface Coverage {
  readonly kind: string;
  readonly quantity: string;
  readonly benches: number;
  /** Shares of the benches. */
  readonly covered: number;
  readonly warned: number;
  /** Those whose interval misses the truth without any warning. */
  readonly untold: number;
  /** Median error of the values as a share of the truth; as it is where the truth is 0. */
  readonly bias: number;
  /** Median width of the intervals as a share of the truth. */
  readonly width: number;
  /** The same two in the canonical unit of the quantity. */
  readonly absolute: { readonly dimension: Dimension; readonly bias: number; readonly width: number };
}

interface Outcome {
  readonly kind: string;
  readonly quantity: string;
  readonly truth: number;
  readonly result: ReducedResult;
  readonly warned: boolean;
}

/** Reduces simulated benches from a first number on, and counts how often the intervals hold the truth; `refused` are those without an answer. */
export function coverageOf(method: MethodName, simulate: Simulate, count: number, first = 0) {
  const outcomes: Outcome[] = [];
  let refused = 0;
  for (let index = first; index < first + count; index++) {
    const bench = simulate(index);
    const found = outcomesOf(method, bench);
    if (found === null) refused++;
    else outcomes.push(...found);
  }
  const groups = groupedBy(outcomes, ({ kind, quantity }) => `${kind}\n${quantity}`);
  return { refused, rows: [...groups.values()].flatMap(coverageRow) };
}

function outcomesOf(name: MethodName, { kind, columns, run, truths }: SimulatedBench): Outcome[] | null {
  const [first = []] = Object.values(columns);
  const reduced = methodOf(name).reduce({ columns, rows: first.map((_, index) => index + 1) }, run);
  if (!reduced.ok) return null;
  const { results, warnings } = reduced.value;
  return Object.entries(truths).flatMap(([quantity, truth]) => {
    const result = results.find((each) => each.quantity === quantity);
    return result === undefined || result.censored !== null
      ? []
      : [{ kind, quantity, truth, result, warned: warnings.length > 0 }];
  });
}

function coverageRow(outcomes: readonly Outcome[]): Coverage[] {
  const [first] = outcomes;
  if (first === undefined) return [];
  const share = (holds: (outcome: Outcome) => boolean) => outcomes.filter(holds).length / outcomes.length;
  const middle = (of: (outcome: Outcome) => number) =>
    outcomes.map(of).sort((one, other) => one - other)[outcomes.length >> 1] ?? Number.NaN;
  const scaleOf = ({ truth }: Outcome) => (truth === 0 ? 1 : Math.abs(truth));
  return [
    {
      kind: first.kind,
      quantity: first.quantity,
      benches: outcomes.length,
      covered: share(holdsTruth),
      warned: share(({ warned }) => warned),
      untold: share((outcome) => !outcome.warned && !holdsTruth(outcome)),
      bias: middle((outcome) => errorOf(outcome) / scaleOf(outcome)),
      width: middle((outcome) => widthOf(outcome) / scaleOf(outcome)),
      absolute: { dimension: first.result.dimension, bias: middle(errorOf), width: middle(widthOf) },
    },
  ];
}

const errorOf = ({ result, truth }: Outcome) => result.value - truth;
const widthOf = ({ result: { interval } }: Outcome) =>
  (interval.high ?? Number.NaN) - (interval.low ?? Number.NaN);

function holdsTruth({ truth, result: { interval } }: Outcome): boolean {
  const { low, high } = interval;
  return low !== null && high !== null && low <= truth && truth <= high;
}
