import { pieceFor } from '../../src/bench/flow-ladder/piece-length.ts';
import { type PlannedFlows, plannedFlows } from '../../src/bench/flow-ladder/planned-flows.ts';
import { filamentFeed } from '../../src/physics/filament-geometry.ts';
import { randomSource } from '../../src/statistics/random.ts';
import { onsetNames, onsets, pick, solve } from '../simulate-ladder.ts';

/** An invented bench with a known limit, at which pieces are fed one by one. */
export interface SimulatedBench {
  /** What the limit is thought to be beforehand, and where it is thought to lie, mm3/s. */
  readonly expected: {
    readonly value: number;
    readonly range: { readonly low: number; readonly high: number };
  };
  /** Even ladder over that range. */
  readonly ladder: PlannedFlows;
  readonly tolerance: number;
  /** mm */
  readonly feedLength: number;
  /** g */
  readonly scaleResolution: number;
  /** mm */
  readonly diameter: number;
  /** g/mm3 */
  readonly density: number;
  /** Feeds a piece at a flow in mm3/s; what the scale shows, g. */
  readonly feed: (flow: number) => number;
  /** The true limit against the share that is delivered at a flow, both in mm3/s. */
  readonly limitAgainst: (lowest: number) => number;
}

/** Factors within which predictions are thought to hold, from trials of the same pairing to conduction alone. */
const spreads = [1.1, 1.25, 1.35, 1.4, 1.45, 1.6, 2];

/** The bench that belongs to a seed. Its curves and its scatter are those of `simulateLadder`. */
export function simulateBench(seed: string): SimulatedBench {
  const random = randomSource(seed);
  const onset = pick(random, onsetNames);
  const tolerance = pick(random, [0.03, 0.05, 0.07, 0.1]);
  const relativeWidth = 0.035 * (0.35 / 0.035) ** random.uniform();
  const place = 12 * 8 ** random.uniform();
  const missing = onsets[onset](relativeWidth, place, random);
  const bend = pick(random, [1, 1, 2]);
  const drift = pick(random, [0, 0.015 * random.uniform(), 0.015 * random.uniform()]);
  const share = (flow: number) => (1 - drift * (flow / place) ** bend) * (1 - missing(flow));
  const spread = pick(random, spreads);
  const value = place * spread ** (random.normal() / 2);
  const range = { low: value / spread, high: value * spread };
  const ladder = plannedFlows(value, range, Number.POSITIVE_INFINITY);
  const scaleResolution = pick(random, [0.01, 0.001]);
  const [density, diameter] = [1.24e-3, 1.75];
  const { length: feedLength } = pieceFor(
    scaleResolution,
    density,
    diameter,
    filamentFeed(ladder.flows.at(-1) ?? 0, diameter),
  );
  const offset = 1 + 0.02 * random.normal();
  const repeatability = 0.002 + 0.007 * random.uniform();
  const heavyTailed = random.uniform() < 0.25;
  const deviate = () => (heavyTailed ? Math.sqrt(0.6) * random.studentT(5) : random.normal());
  const fed = feedLength * density * Math.PI * (diameter / 2) ** 2 * offset;
  return {
    expected: { value, range },
    ...{ ladder, tolerance, feedLength, scaleResolution, diameter, density },
    feed: (flow) => {
      const mass = fed * share(flow) * (1 + repeatability * deviate());
      return Math.round(mass / scaleResolution) * scaleResolution;
    },
    limitAgainst: (lowest) => solve((flow) => 1 - share(flow) / share(lowest), tolerance, lowest, 5 * place),
  };
}
