import { nextPiece } from '../../src/bench/flow-ladder/next-piece/next-piece.ts';
import { reduceFlowLadder } from '../../src/bench/flow-ladder/reduce-flow-ladder.ts';
import type { ReducedResult } from '../../src/bench/reduction.ts';
import { type SimulatedBench, simulateBench } from './simulate-bench.ts';

type Fed = readonly [flow: number, mass: number];

/** A ladder as far as it was fed. */
export interface State {
  readonly pieces: number;
  readonly width: number | null;
  readonly covers: boolean;
  /** Pieces that the asked width would still take, as it was said. */
  readonly toGo: number | null;
  readonly milliseconds: number;
}

/** Width at which feeding is told to stop unless a policy says another, as a part of the limit. */
export const askedWidth = 0.05;
const repeats = 2;

function observationsOf(fed: readonly Fed[], { feedLength }: SimulatedBench) {
  return {
    columns: {
      commandedFlow: fed.map(([flow]) => flow),
      feedLength: fed.map(() => feedLength),
      extrudedMass: fed.map(([, mass]) => mass),
    },
    rows: fed.map((_, index) => index + 1),
  };
}

function settingsOf({ diameter, density, tolerance, scaleResolution }: SimulatedBench) {
  return {
    ...{ filamentDiameter: diameter, density, acceptedDeficit: tolerance },
    massResolution: scaleResolution,
  };
}

function covers(bench: SimulatedBench, fed: readonly Fed[], result: ReducedResult | null): boolean {
  const { low = null, high = null } = result?.interval ?? {};
  const limit = bench.limitAgainst(Math.min(...fed.map(([flow]) => flow)));
  return low !== null && high !== null && low <= limit && limit <= high;
}

const widthOf = ({ value, interval: { low, high } }: ReducedResult) =>
  low === null || high === null ? null : (high - low) / value;

/** The even ladder as a technician runs it: to its end, or until two flows in a row lack more than a quarter. */
function feedEvenly(bench: SimulatedBench): State | null {
  const fed: Fed[] = [];
  let short = 0;
  for (const flow of bench.ladder.flows) {
    for (let repeat = 0; repeat < repeats; repeat++) fed.push([flow, bench.feed(flow)]);
    const [first, last] = [fed[0]?.[1] ?? 0, fed.at(-1)?.[1] ?? 0];
    short = last < 0.75 * first ? short + 1 : 0;
    if (short === 2) break;
  }
  const reduced = reduceFlowLadder(observationsOf(fed, bench), settingsOf(bench));
  const result = reduced.ok ? (reduced.value.results[0] ?? null) : null;
  const width = result === null ? null : widthOf(result);
  if (width === null) return null;
  return { pieces: fed.length, width, covers: covers(bench, fed, result), toGo: null, milliseconds: 0 };
}

/** The states of a ladder that is fed piece by piece, and those at which feeding was told to stop. */
interface OneByOne {
  readonly states: readonly State[];
  readonly stops: readonly State[];
}

/** Feeds until the interval is as narrow as each of some widths, the widest first, then on to so many pieces. */
function feedOneByOne(bench: SimulatedBench, widths: readonly number[], most: number): OneByOne {
  const fed: Fed[] = [];
  const parts = widths.map((width) => feedUntil(bench, fed, width, 2 * most));
  const stops = parts.map((part) => part.at(-1) ?? unreachable());
  const states = [...parts.flat(), ...feedUntil(bench, fed, 0, most)];
  return { states, stops };
}

/** Feeds on until the interval is so narrow, nothing narrows it, or there are so many pieces; the states on the way. */
function feedUntil(bench: SimulatedBench, fed: Fed[], width: number, most: number): State[] {
  const { state, flow } = ask(bench, fed, width);
  if (flow === null || fed.length >= most) return [state];
  fed.push([flow, bench.feed(flow)]);
  return [state, ...feedUntil(bench, fed, width, most)];
}

/** Where a ladder stands, and the flow to feed next; null to stop. */
function ask(
  bench: SimulatedBench,
  fed: readonly Fed[],
  width: number,
): { readonly state: State; readonly flow: number | null } {
  const { flows } = bench.ladder;
  const lowest = flows[0] ?? Number.NaN;
  const { value, range } = bench.expected;
  const expected = { value, ...range };
  const start = performance.now();
  const asked = nextPiece(
    { observations: observationsOf(fed, bench), settings: settingsOf(bench) },
    { lowest, highest: flows.at(-1) ?? lowest, expected, askedWidth: width },
  );
  const milliseconds = performance.now() - start;
  if (!asked.ok) throw new Error(`simulated pieces were refused: ${JSON.stringify(asked.error)}`);
  const { pieces, width: reached, result, next } = asked.value;
  const isFed = next.step === 'feed';
  return {
    state: {
      ...{ pieces, width: reached, milliseconds },
      covers: covers(bench, fed, result),
      toGo: isFed && width > 0 ? next.piecesToGo : null,
    },
    flow: isFed ? next.flow : null,
  };
}

export function unreachable(): never {
  throw new Error('a ladder has a state even before its first piece');
}

/** An even ladder, and one that is fed piece by piece at the same bench. */
export interface Compared {
  readonly even: State;
  readonly asNarrow: State;
  readonly half: State;
  readonly asked: State;
  /** By how many pieces what was said of those still to go was too many, one by one. */
  readonly said: readonly number[];
  readonly slowest: number;
}

/** Feeds the bench of a seed both ways; null where the even ladder brackets no limit. */
export function compareAtBench(seed: string): Compared | null {
  const bench = simulateBench(seed);
  const even = feedEvenly(bench);
  if (even?.width == null) return null;
  const isWider = even.width > askedWidth;
  const widths = isWider ? [even.width, askedWidth] : [askedWidth, even.width];
  const { states, stops } = feedOneByOne(bench, widths, even.pieces);
  const [wider = unreachable(), narrower = unreachable()] = stops;
  const asked = isWider ? narrower : wider;
  const untilAsked = states.slice(0, states.indexOf(asked));
  return {
    ...{ even, asked },
    asNarrow: isWider ? wider : narrower,
    half:
      states.find(({ pieces }) => pieces === Math.floor(even.pieces / 2)) ?? states.at(-1) ?? unreachable(),
    said: untilAsked.flatMap(({ pieces, toGo }) => (toGo === null ? [] : [pieces + toGo - asked.pieces])),
    slowest: Math.max(...states.map(({ milliseconds }) => milliseconds)),
  };
}
