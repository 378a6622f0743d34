import { fitLimitLine } from '../../src/bench/limit-line/limit-line.ts';
import { limitAt } from '../../src/bench/limit-line/limit-line-answers.ts';
import { randomSource } from '../../src/statistics/random.ts';
import { normalFactor } from '../../src/statistics/scatter.ts';
import type { Coverage } from './simulated-bench.ts';

/** Lines of one kind: how many ladders, and how far they truly scatter against what their intervals say. */
export interface LineKind {
  readonly ladders: number;
  readonly scatter: number;
  /** Whether a whole bench is that much worse, or each run has an offset of its own beside what its interval explains. */
  readonly extra: 'every interval is too short' | 'runs differ';
}

/** What becomes of simulated lines. */
export interface LineCoverage extends Omit<Coverage, 'absolute'> {
  /** Mean width of the bands against that which the intervals alone would make. */
  readonly wider: number;
}

/** °C */
const [coldest, hottest] = [210, 240];

/** How often the band of simulated lines holds the truth at a temperature between the ladders, drawn by a seed. */
export function lineCoverage(
  { ladders, scatter, extra }: LineKind,
  lines: number,
  seed: string,
): LineCoverage {
  const random = randomSource(`${seed} ${ladders} ${scatter} ${extra}`);
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const outcomes = Array.from({ length: lines }, () => {
    const [level, slope, usual] = [between(15, 40), between(0.1, 0.6), between(0.2, 0.8)];
    const truth = (temperature: number) => level + slope * (temperature - coldest);
    const points = Array.from({ length: ladders }, (_, index) => {
      const temperature = coldest + ((hottest - coldest) * index) / (ladders - 1);
      const uncertainty = usual * between(1, 2);
      const own = extra === 'runs differ' ? 1 : scatter;
      const run = extra === 'runs differ' ? usual * 1.5 * Math.sqrt(scatter ** 2 - 1) : 0;
      const limit = truth(temperature) + own * uncertainty * random.normal() + run * random.normal();
      const half = normalFactor * uncertainty;
      return { temperature, limit, low: limit - half, high: limit + half };
    });
    const fit = fitLimitLine(points);
    const temperature = between(coldest, hottest);
    const answer = fit.ok ? limitAt(fit.value, temperature) : fit;
    if (!fit.ok || !answer.ok) throw new Error('there is a line, and the temperature is tested');
    const { low, high, limit } = answer.value;
    const { coverageFactor, birgeRatio, isWidened } = fit.value;
    return {
      covered: low <= truth(temperature) && truth(temperature) <= high,
      warned: isWidened,
      width: (high - low) / truth(temperature),
      error: limit / truth(temperature) - 1,
      wider: (coverageFactor * Math.max(1, birgeRatio ?? 1)) / normalFactor,
    };
  });
  const share = (of: (outcome: (typeof outcomes)[number]) => boolean) => outcomes.filter(of).length / lines;
  const middle = (values: number[]) => values.sort((one, other) => one - other)[lines >> 1] ?? Number.NaN;
  return {
    kind: `${ladders} ladders, ${scatter} times (${extra})`,
    quantity: 'limit at a temperature',
    benches: lines,
    covered: share(({ covered }) => covered),
    warned: share(({ warned }) => warned),
    untold: share(({ warned, covered }) => !warned && !covered),
    width: middle(outcomes.map(({ width }) => width)),
    bias: middle(outcomes.map(({ error }) => error)),
    wider: outcomes.reduce((sum, { wider }) => sum + wider, 0) / lines,
  };
}
