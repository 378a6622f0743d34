import { quantile, sortedDraws } from '../../src/statistics/coverage-interval.ts';
import { describe } from '../../src/statistics/describe.ts';
import { askedWidth, type Compared, type State } from './compare-at-bench.ts';

const mean = (values: readonly number[]) => describe(values).mean;
const median = (values: readonly number[]) => quantile(sortedDraws(values), 0.5);
const percent = (share: number, columns: number) => `${(100 * share).toFixed(1)} %`.padStart(columns);

/** One row: pieces, their share of those of the even ladder, coverage, widths, and how many bracket no limit. */
function line(name: string, states: readonly State[], evens: readonly State[]): string {
  const bracketed = states.filter(({ width }) => width !== null);
  const widths = bracketed.map(({ width }) => width ?? Number.NaN);
  const shares = states.map(({ pieces }, index) => pieces / (evens[index]?.pieces ?? Number.NaN));
  return [
    name.padEnd(24),
    mean(states.map(({ pieces }) => pieces))
      .toFixed(1)
      .padStart(7),
    percent(median(shares), 10),
    percent(bracketed.filter(({ covers }) => covers).length / bracketed.length, 9),
    percent(mean(widths), 12),
    percent(median(widths), 14),
    String(states.length - bracketed.length).padStart(6),
  ].join('');
}

/** What feeding piece by piece gives against the even ladders of the same benches. */
export function comparisonTable(compared: readonly Compared[]): string[] {
  const evens = compared.map(({ even }) => even);
  const row = (name: string, state: (outcome: Compared) => State) => line(name, compared.map(state), evens);
  const narrower = compared.filter(({ even, half }) => (half.width ?? 1) <= (even.width ?? 0));
  const said = compared.map(({ said: errors }) => errors);
  return [
    `${''.padEnd(24)} pieces   of even  covered  mean width  median width  open`,
    row('even ladder', ({ even }) => even),
    row('half of its pieces', ({ half }) => half),
    row('until as narrow', ({ asNarrow }) => asNarrow),
    row(`until ${100 * askedWidth} % wide`, ({ asked }) => asked),
    `with half of the pieces narrower: ${narrower.length} of ${compared.length}`,
    `pieces still to go, as said less as fed: ${mean(said.flatMap(([first]) => first ?? [])).toFixed(1)} before the first, ${mean(said.flat()).toFixed(1)} on the way, ${mean(said.flat().map(Math.abs)).toFixed(1)} without sign`,
    `slowest question: ${Math.max(...compared.map(({ slowest }) => slowest)).toFixed(0)} ms`,
  ];
}
