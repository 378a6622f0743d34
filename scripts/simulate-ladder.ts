import { type RandomSource, randomSource } from '../src/statistics/random.ts';

/**
 * Flow ladders of an invented bench with a known true limit, to test a reduction against. The onset curves below are
 * written apart from the ones the reduction fits, so that agreement is not bought by sharing them.
 */
export interface SimulatedLadder {
  /** Commanded flow mm3/s, feed length mm, extruded mass g. */
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
  /** The same against the share at no flow at all, as another reader of "the lowest steps" might have it, mm3/s. */
  readonly limitAgainstNoFlow: number;
  readonly traits: LadderTraits;
}

/** What kind of ladder it is, to tabulate by. */
export interface LadderTraits {
  readonly onset: OnsetName;
  readonly repeats: number;
  /** Step in units of the limit. */
  readonly relativeStep: number;
  /** Flow from 2 % to 20 % missing in units of the limit. */
  readonly relativeWidth: number;
}

export const onsets = {
  /** Delivered flow bends over into a ceiling: the melt zone can do no more. */
  ceiling: steepened((flow, power) => 1 - (1 + flow ** power) ** (-1 / power)),
  /** Melt-limited delivery, an exponential approach to the ceiling. */
  exponentialCeiling: steepened((flow, power) => {
    const melted = -Math.expm1(-(flow ** power));
    return melted === 0 ? 0 : 1 - melted ** (1 / power) / flow;
  }),
  /** Slip that grows with a power of the excess flow and levels off. */
  powerSlip: stretched((random) => {
    const power = 1 + 1.2 * random.uniform();
    const top = 0.45 + 0.5 * random.uniform();
    return (excess) => (excess <= 0 ? 0 : top * Math.tanh(excess ** power));
  }),
  /** A melting front that runs away: exponential approach to a floor. */
  runaway: stretched((random) => {
    const power = 1 + 1.2 * random.uniform();
    const top = 0.35 + 0.6 * random.uniform();
    return (excess) => (excess <= 0 ? 0 : top * (1 - Math.exp(-(excess ** power))));
  }),
  /** Many small slips, each at its own flow: an S-curve without a threshold. */
  scatteredSlips: stretched((random) => {
    const top = 0.4 + 0.5 * random.uniform();
    return (excess) => top / (1 + Math.exp(-4 * (excess - 0.6)));
  }),
  /** A heavy-tailed S-curve in the excess. */
  arcTangent: stretched((random) => {
    const top = 0.5 + 0.4 * random.uniform();
    return (excess) => (excess <= 0 ? 0 : (top * 2 * Math.atan(excess * excess)) / Math.PI);
  }),
  /** Two straight lines with rounded corners. */
  brokenLine: stretched((random) => {
    const top = 0.5 + 0.4 * random.uniform();
    const corner = 0.03 + 0.1 * random.uniform();
    const ramp = (excess: number) => corner * Math.log1p(Math.exp(excess / corner));
    return (excess) => top * (ramp(excess) - ramp(excess - 1));
  }),
} satisfies Record<string, Shape>;

export type OnsetName = keyof typeof onsets;
export const onsetNames = Object.keys(onsets) as OnsetName[]; // Object.keys widens to string

/** Makes a curve over flow in mm3/s whose flow from 2 % to 20 % missing is `width` times the flow at 5 %. */
type Shape = (width: number, place: number, random: RandomSource) => (flow: number) => number;

/** A family whose sharpness is one power: the power is solved for. */
function steepened(missing: (flow: number, power: number) => number): Shape {
  return (width, place) => {
    const power = solve(
      (candidate) => {
        const at = (share: number) => solve((flow) => missing(flow, candidate), share, 0.05, 3);
        return -(at(0.2) - at(0.02)) / at(0.05);
      },
      -width,
      1.5,
      200,
    );
    return (flow) => missing(flow / place, power);
  };
}

/** A family over the stretched excess flow. */
function stretched(draw: (random: RandomSource) => (excess: number) => number): Shape {
  return (width, place, random) => {
    const missing = draw(random);
    const at = (share: number) => solve(missing, share, -5, 20);
    const stretch = (width * place) / (at(0.2) - at(0.02));
    const shift = place - at(0.05) * stretch;
    return (flow) => missing((flow - shift) / stretch);
  };
}

/** The argument at which an increasing function reaches a value, by bisection. */
export function solve(
  increasing: (argument: number) => number,
  value: number,
  low: number,
  high: number,
): number {
  let [below, above] = [low, high];
  for (let step = 0; step < 60; step++) {
    const middle = (below + above) / 2;
    if (increasing(middle) < value) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}

export function pick<Item>(random: RandomSource, items: readonly Item[]): Item {
  const item = items[Math.floor(random.uniform() * items.length)];
  if (item === undefined) throw new RangeError('nothing to pick from');
  return item;
}

/** Simulates the ladder that belongs to a seed, and another run of it with another noise. */
export function simulateLadder(seed: string, noise?: RandomSource): SimulatedLadder {
  const random = randomSource(seed);
  const { normal, studentT } = noise ?? random;
  const onset = pick(random, onsetNames);
  const tolerance = pick(random, [0.03, 0.05, 0.07, 0.1]);
  const repeats = pick(random, [1, 2, 3]);
  const relativeWidth = 0.035 * (0.35 / 0.035) ** random.uniform();
  const place = 12 * 8 ** random.uniform();
  const missing = onsets[onset](relativeWidth, place, random);
  const bend = pick(random, [1, 1, 2]);
  const drift = pick(random, [0, 0.015 * random.uniform(), 0.015 * random.uniform()]);
  const share = (flow: number) => (1 - drift * (flow / place) ** bend) * (1 - missing(flow));
  const { flows, step } = layOut(place, random);
  const lowest = share(flows[0] ?? 0);
  const limitAgainst = (reference: number) =>
    solve((flow) => 1 - share(flow) / reference, tolerance, flows[0] ?? 0, 5 * place);
  const limit = limitAgainst(lowest);
  const feedLength = pick(random, [300, 400, 500, 800]);
  const scaleResolution = pick(random, [0.01, 0.001]);
  const offset = 1 + 0.02 * random.normal();
  const repeatability = 0.002 + 0.007 * random.uniform();
  const heavyTailed = random.uniform() < 0.25;
  const deviate = () => (heavyTailed ? Math.sqrt(0.6) * studentT(5) : normal());
  const density = 1.24e-3;
  const diameter = 1.75;
  const fed = feedLength * density * Math.PI * (diameter / 2) ** 2 * offset;
  const rows = flows.flatMap((flow) =>
    Array.from({ length: repeats }, (): readonly [number, number, number] => {
      const mass = fed * share(flow) * (1 + repeatability * deviate());
      return [flow, feedLength, Math.round(mass / scaleResolution) * scaleResolution];
    }),
  );
  return {
    rows,
    tolerance,
    scaleResolution,
    nominalDiameter: diameter,
    nominalDensity: density,
    limit,
    limitAgainstNoFlow: limitAgainst(1),
    traits: { onset, repeats, relativeStep: step / limit, relativeWidth },
  };
}

/** Flows as a technician lays them out: from about 0.4 of the expected limit, to some way beyond it, 16 steps at most. */
function layOut(
  place: number,
  random: RandomSource,
): { readonly flows: readonly number[]; readonly step: number } {
  const start = Math.max(2, Math.round(place * (0.3 + 0.2 * random.uniform())));
  const fineness = random.uniform();
  const relative =
    fineness < 0.45
      ? 0.045 + 0.04 * random.uniform()
      : fineness < 0.92
        ? 0.09 + 0.11 * random.uniform()
        : 0.2 + 0.3 * random.uniform();
  const step = Math.max(0.25, Math.round(4 * place * relative) / 4);
  const end = place * (1.05 + 0.25 * random.uniform());
  const count = Math.min(16, Math.max(6, Math.ceil((end - start) / step) + 1));
  return { flows: Array.from({ length: count }, (_, index) => start + index * step), step };
}
