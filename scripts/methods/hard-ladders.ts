import { type RandomSource, randomSource } from '../../src/statistics/random.ts';

/** A flow ladder of an invented bench with a known truth. */
export interface KnownLadder {
  /** Commanded flow mm3/s, feed length mm, extruded mass g; in the order of the run. */
  readonly rows: readonly (readonly [number, number, number])[];
  readonly tolerance: number;
  /** g */
  readonly scaleResolution: number;
  /** mm */
  readonly nominalDiameter: number;
  /** g/mm3 */
  readonly nominalDensity: number;
  /** The flow at which the delivered share has fallen by the tolerance below its value at the lowest step, mm3/s. */
  readonly limit: number;
  /** The same against the share at no flow at all, mm3/s. */
  readonly limitAgainstNoFlow: number;
}

/** What one class of ladders does its own way. */
interface Habits {
  /** The share that is missing at a flow in units of the onset's place, and grows with the flow. */
  readonly missing: (random: RandomSource, tolerance: number) => (flow: number) => number;
  /** Standard deviation of a reading that is missing a share, in units of the usual one. */
  readonly scatter?: (random: RandomSource) => (missing: number) => number;
  /** How much the gain of the scale has changed at the end of the run. */
  readonly gainDrift?: (random: RandomSource) => number;
  readonly order?: 'ascending' | 'random' | 'passes';
  /** Highest flow in units of the onset's place. */
  readonly end?: (random: RandomSource) => number;
  /** How many steps follow the limit at most. */
  readonly stepsBeyond?: number;
}

const between = (random: RandomSource, low: number, high: number) => low + (high - low) * random.uniform();
const betweenLogs = (random: RandomSource, low: number, high: number) =>
  low * (high / low) ** random.uniform();
const pick = <Item>(random: RandomSource, items: readonly [Item, ...Item[]]): Item =>
  items[Math.floor(random.uniform() * items.length)] ?? items[0];

/** A rounded onset, by its flow from 2 % to 20 % missing in units of the place. */
function roundedOnset(random: RandomSource): (flow: number) => number {
  const width = betweenLogs(random, 0.035, 0.35);
  const top = between(random, 0.45, 0.95);
  const power = between(random, 1.1, 2.2);
  const excessAt = (missing: number) => (-Math.log1p(-missing / top)) ** (1 / power);
  const stretch = width / (excessAt(0.2) - excessAt(0.02));
  const start = 1 - excessAt(0.05) * stretch;
  return (flow) => (flow <= start ? 0 : top * (1 - Math.exp(-(((flow - start) / stretch) ** power))));
}

function knee(random: RandomSource): (flow: number) => number {
  const slope = betweenLogs(random, 1.5, 8);
  const floor = between(random, 0.6, 0.95);
  return (flow) => Math.min(Math.max(0, slope * (flow - 1)), floor);
}

function jam(random: RandomSource): (flow: number) => number {
  const missing = between(random, 0.3, 0.9);
  return (flow) => (flow < 1 ? 0 : missing);
}

const drifting = (random: RandomSource) => between(random, -0.015, 0.015);

/** How ladders can go another way than those of `simulateLadder`. */
const habits = {
  /** A straight, steep fall from the onset on. */
  sharpKnee: { missing: knee },
  /** The deficit grows from the first step, with no knee. */
  veryGradual: {
    missing: (random, tolerance) => {
      const power = between(random, 1, 3);
      return (flow) => Math.min(tolerance * flow ** power, 0.9);
    },
    end: (random) => between(random, 1.2, 1.6),
  },
  /** A small deficit proportional to the flow before the onset. */
  fromStart: {
    missing: (random) => {
      const [slope, onset] = [between(random, 0.01, 0.03), roundedOnset(random)];
      return (flow) => 1 - (1 - slope * flow) * (1 - onset(flow));
    },
  },
  /** The gain of the scale drifts over the run, up or down. */
  scaleDrift: { missing: roundedOnset, gainDrift: drifting },
  scaleDriftInRandomOrder: { missing: roundedOnset, gainDrift: drifting, order: 'random' },
  scaleDriftInPasses: { missing: roundedOnset, gainDrift: drifting, order: 'passes' },
  /** Nothing is wrong but for the order. */
  randomOrder: { missing: roundedOnset, order: 'random' },
  /** All is well, then a third to nearly all is missing at once. */
  suddenJam: { missing: jam, stepsBeyond: 1 },
  suddenJamAndOn: { missing: jam, stepsBeyond: 4 },
  /** The lowest step is missing something already, and so are all. */
  lowestStarves: {
    missing: (random) => {
      const [lost, onset] = [between(random, 0.01, 0.025), roundedOnset(random)];
      return (flow) => 1 - (1 - lost) * (1 - onset(flow));
    },
  },
  /** The scatter grows with what is missing. */
  noisyPastOnset: {
    missing: roundedOnset,
    scatter: (random) => {
      const growth = between(random, 10, 50);
      return (missing) => 1 + growth * missing;
    },
  },
  /** Feed that is calibrated too high brings more than all: the mass rises over the whole run. */
  rising: {
    missing: (random) => {
      const [rise, bend] = [between(random, 0.03, 0.12), between(random, 0.5, 2)];
      return (flow) => -rise * (flow / 1.3) ** bend;
    },
  },
  /** Every step holds. */
  allHeld: {
    missing: (random) => {
      const slope = between(random, 0, 0.008);
      return (flow) => slope * flow;
    },
  },
} as const satisfies Readonly<Record<string, Habits>>;

export type HardClass = keyof typeof habits;
export const hardClasses = Object.keys(habits) as readonly HardClass[];

/** The ladder of a class that belongs to a seed, and another run of it with another noise; a limit that is not reached is infinite. */
export function hardLadder(name: HardClass, seed: string, noise?: RandomSource): KnownLadder {
  const random = randomSource(`${name} ${seed}`);
  const { normal } = noise ?? random;
  const own: Habits = habits[name];
  const tolerance = pick(random, [0.03, 0.05, 0.07, 0.1]);
  const missing = own.missing(random, tolerance);
  const scatter = own.scatter?.(random) ?? (() => 1);
  const place = betweenLogs(random, 8, 96);
  const share = (flow: number) => 1 - missing(flow / place);
  const all = flowsOf(place, own.end?.(random) ?? between(random, 1.08, 1.3), random);
  const limit = limitOf(share, share(all[0] ?? 0), tolerance, place);
  const past = all.findIndex((flow) => flow > limit);
  const flows = past < 0 ? all : all.slice(0, past + (own.stepsBeyond ?? all.length));
  const repeats = pick(random, [1, 2, 3]);
  const scaleResolution = pick(random, [0.01, 0.001]);
  const feedLength = pick(random, [400, 500, 800, 1000]);
  const [diameter, density] = [1.75, 1.24e-3];
  const fed = feedLength * density * Math.PI * (diameter / 2) ** 2 * (1 + 0.015 * random.normal());
  const repeatability = between(random, 0.002, 0.008);
  const run = inOrder(own.order ?? 'ascending', flows, repeats, random);
  const gain = own.gainDrift?.(random) ?? 0;
  const rows = run.map((flow, index): readonly [number, number, number] => {
    const lost = missing(flow / place);
    const scattered = 1 + repeatability * scatter(Math.max(0, lost)) * normal();
    const mass = fed * share(flow) * Math.max(scattered, 0.1) * (1 + (gain * index) / (run.length - 1));
    const read = Math.max(1, Math.round(mass / scaleResolution)) * scaleResolution;
    return [flow, feedLength, Number(read.toFixed(3))];
  });
  return {
    ...{ rows, tolerance, scaleResolution, nominalDiameter: diameter, nominalDensity: density, limit },
    limitAgainstNoFlow: limitOf(share, share(0), tolerance, place),
  };
}

/** Where the share has fallen by the tolerance below a reference, mm3/s; infinite where it never does. */
function limitOf(
  share: (flow: number) => number,
  reference: number,
  tolerance: number,
  place: number,
): number {
  let [low, high] = [0, 3 * place];
  if (share(high) > reference * (1 - tolerance)) return Number.POSITIVE_INFINITY;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (share(middle) > reference * (1 - tolerance)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** From a third to half of the place to an end in units of it, in even steps of a twentieth to a fifth. */
function flowsOf(place: number, end: number, random: RandomSource): number[] {
  const start = place * between(random, 0.3, 0.5);
  const step = place * betweenLogs(random, 0.045, 0.2);
  const count = Math.min(18, Math.max(6, Math.ceil((place * end - start) / step) + 1));
  return Array.from({ length: count }, (_, index) => Math.round(10 * (start + index * step)) / 10);
}

/** The flows as they are run. */
function inOrder(
  order: NonNullable<Habits['order']>,
  flows: readonly number[],
  repeats: number,
  random: RandomSource,
): number[] {
  const count = order === 'passes' ? Math.max(2, repeats) : repeats;
  const passes = Array.from({ length: count }, () => flows).flat();
  if (order === 'passes') return passes;
  if (order === 'ascending') return passes.sort((one, other) => one - other);
  return passes
    .map((flow) => ({ flow, place: random.uniform() }))
    .sort((one, other) => one.place - other.place)
    .map(({ flow }) => flow);
}
