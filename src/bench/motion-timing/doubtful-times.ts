import type { DoubtfulReading } from '../doubt/doubtful-reading.ts';
import { chanceOf, isUnlikely } from '../doubt/unlikely.ts';
import type { Observations } from '../sheet/observations.ts';
import type { MotionTimingRun } from './motion-timing-facts.ts';
import { fitShuttles, fittedDuration, type ShuttleFit } from './shuttle-fit.ts';
import {
  heldShuttles,
  lostShuttles,
  type Shuttle,
  type ShuttleRun,
  shuttleRun,
  shuttlesOf,
} from './shuttle-run.ts';

/** s; a hand at a stop watch scatters by less, so that nothing is doubtful (common practice, no source). */
const usualScatter = 0.25;
/** s; what ramps of some other form may be off by. */
const leastDeviation = 0.6;
/** s */
const roundings = [0, 0.01, 0.04, 0.16];
/** Only times with the largest residuals can be the one that is off. */
const candidates = 4;
const mostSlips = 3;

/** The times of moves that the motion which all others show does not explain. */
export function doubtfulTimes(observations: Observations, run: MotionTimingRun): DoubtfulReading[] {
  const all = shuttlesOf(observations, run);
  const rowOf = new Map(all.map((shuttle, index) => [shuttle, observations.rows[index] ?? index + 1]));
  const found: DoubtfulReading[] = [];
  let rest: readonly Shuttle[] = heldShuttles(all, lostShuttles(all, run));
  while (found.length < mostSlips) {
    const worst = worstOf(rest, run);
    if (worst === null) break;
    const { shuttle, expected, spread } = worst;
    const row = rowOf.get(shuttle) ?? Number.NaN;
    found.push({
      row,
      column: 'duration',
      found: shuttle.duration,
      expected,
      spread,
      isRelative: false,
      rival: null,
    });
    rest = rest.filter((each) => each !== shuttle);
  }
  return found;
}

interface Judged {
  readonly shuttle: Shuttle;
  readonly expected: number;
  readonly spread: number;
  readonly freedom: number;
}

function worstOf(shuttles: readonly Shuttle[], run: MotionTimingRun): Judged | null {
  const timed = shuttleRun(shuttles, run);
  const fit = bestFit(timed);
  if (fit === null || fit.scatter <= usualScatter) return null;
  const residual = (shuttle: Shuttle) => Math.abs(shuttle.duration - fittedDuration(shuttle, fit, timed));
  const judged = shuttles
    .toSorted((one, other) => residual(other) - residual(one))
    .slice(0, candidates)
    .flatMap((shuttle) => judge(shuttle, shuttles, run) ?? []);
  const [worst] = judged.toSorted((one, other) => one.spread - other.spread);
  if (worst === undefined) return null;
  const off = worst.shuttle.duration - worst.expected;
  const isDoubtful =
    Math.abs(off) > leastDeviation &&
    isUnlikely(chanceOf(off / worst.spread, worst.freedom, shuttles.length));
  return isDoubtful ? worst : null;
}

/** A time with what the others let expect; null where without it they tell no motion, or none at its speed. */
function judge(shuttle: Shuttle, shuttles: readonly Shuttle[], run: MotionTimingRun): Judged | null {
  const others = shuttleRun(
    shuttles.filter((each) => each !== shuttle),
    run,
  );
  const fit = bestFit(others);
  if (fit === null || fit.degreesOfFreedom < 2) return null;
  const expected = fittedDuration(shuttle, fit, others);
  const spread = fit.scatter * Math.SQRT2;
  return Number.isFinite(expected) ? { shuttle, expected, spread, freedom: fit.degreesOfFreedom } : null;
}

function bestFit(run: ShuttleRun): ShuttleFit | null {
  const fits = roundings.flatMap((rounding) => fitShuttles(run, rounding) ?? []);
  return fits.toSorted((one, other) => one.scatter - other.scatter)[0] ?? null;
}
