/**
 * How often the 95 % interval of a reduced flow ladder holds the true limit where ladders go another way, class by class.
 * Usage: npm run coverage -- --class NAME|all [LADDERS] [SEED]
 */
import { describe } from '../src/statistics/describe.ts';
import { type HardClass, hardClasses, hardLadder, type KnownLadder } from './methods/hard-ladders.ts';
import { reducedLadder } from './methods/reduced-ladder.ts';
import { simulateLadder } from './simulate-ladder.ts';

/** How a class of ladders comes out. */
export interface ClassCoverage {
  readonly name: string;
  readonly measured: number;
  /** Ladders that gave a lower or an upper bound, and bounds that lie beyond the limit. */
  readonly bounds: number;
  readonly falseBounds: number;
  readonly refused: number;
  /** Of those measured: shares, and as shares of the limit. */
  readonly covered: number;
  readonly width: number;
  readonly bias: number;
  /** Ladders with a warning of a jam, a drift over the run, or a mass that diameter and density do not explain. */
  readonly warned: number;
}

const special = /sudden jam|Over the run|of the fed mass came out|extrusion is unsteady/;

/** Simulates a class, `clean` or one of the hard ones, and counts. */
export function classCoverage(name: HardClass | 'clean', count: number, seed: string): ClassCoverage {
  const outcomes = Array.from({ length: count }, (_, index) => {
    const ladder: KnownLadder =
      name === 'clean' ? simulateLadder(`${seed} ${index}`) : hardLadder(name, `${seed} ${index}`);
    const reduced = reducedLadder(ladder);
    return reduced.ok ? [{ ladder, ...reduced.value }] : [];
  }).flat();
  const limits = outcomes.flatMap(({ ladder, results: [result] }) =>
    result === undefined ? [] : [{ truth: ladder.limit, ...result }],
  );
  const measured = limits.filter(({ censored }) => censored === null);
  const ends = measured.map(({ truth, value, interval: { low, high } }) => ({
    holds: (low ?? Number.NaN) <= truth && truth <= (high ?? Number.NaN),
    width: ((high ?? Number.NaN) - (low ?? Number.NaN)) / value,
    error: value / truth - 1,
  }));
  const mean = (values: readonly number[]) => (values.length === 0 ? Number.NaN : describe(values).mean);
  return {
    name,
    measured: measured.length,
    bounds: limits.length - measured.length,
    falseBounds: limits.filter(({ censored, value, truth }) => censored === 'above' && value > truth).length,
    refused: count - outcomes.length,
    covered: mean(ends.map(({ holds }) => Number(holds))),
    width: mean(ends.map(({ width }) => width)),
    bias: mean(ends.map(({ error }) => error)),
    warned: outcomes.filter(({ warnings }) => special.test(warnings.join(' '))).length,
  };
}

/** The table of one class or of all. */
export function printClassCoverage(asked: string, count: number, seed: string): void {
  const names = (['clean', ...hardClasses] as const).filter((name) => asked === 'all' || name === asked);
  if (names.length === 0) throw new RangeError(`no class ${asked}: one of clean, ${hardClasses.join(', ')}`);
  const percent = (value: number) =>
    (Number.isNaN(value) ? '–' : `${(100 * value).toFixed(1)} %`).padStart(9);
  console.log(
    `${'class'.padEnd(26)} limits  covered    width     bias   bounds  false  refused  warned of ${count}`,
  );
  for (const name of names) {
    const row = classCoverage(name, count, seed);
    const counts = [row.bounds, row.falseBounds, row.refused, row.warned];
    console.log(
      [
        name.padEnd(26),
        String(row.measured).padStart(7),
        ...[row.covered, row.width, row.bias].map(percent),
        ...counts.map((each) => String(each).padStart(8)),
      ].join(''),
    );
  }
}
