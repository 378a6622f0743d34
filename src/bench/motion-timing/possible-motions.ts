import { type RandomSource, randomSource } from '../../statistics/random.ts';
import { fitShuttles, reachedAcceleration, type ShuttleFit } from './shuttle-fit.ts';
import type { ShuttleRun } from './shuttle-run.ts';

/**
 * Ways in which the machine may move at the highest commanded speed and acceleration, equally probable: one of each list.
 * Lists of numbers, since thousands of objects take longer to make than to reckon.
 */
export interface DrawnMotions {
  readonly count: number;
  /** Reached, mm/s. */
  readonly speed: Float64Array;
  /** Full acceleration of the ramps, mm/s2, whether it is reached or not. */
  readonly acceleration: Float64Array;
  /** At each turn, s. */
  readonly pause: Float64Array;
  /** s */
  readonly rounding: Float64Array;
}

/** What the times leave possible. */
export interface PossibleMotions {
  readonly motions: DrawnMotions;
  /** The fit that the times speak for most. */
  readonly best: ShuttleFit;
  /** Probability that the ramps are rounded. */
  readonly rounded: number;
}

/** s; a shorter rounding makes no difference to a bench, a longer one is no ramp of a printer any more (common practice, no source). */
const roundings = { shortest: 0.002, longest: 0.512, ratio: 2 };
/** How likely it is, before any reading, that the ramps are not rounded (common practice, no source). */
const steadyShare = 0.3;
/** How many nodes are put between, where it matters. */
const refinements = 8;
/** Share by which the reached acceleration may differ between neighbours without one between them. */
const leastGain = 0.002;
/** JCGM 101:2008, 7.2 asks for some 10 000 draws a digit of the ends; three digits of a bench reading need fewer. */
const draws = 3000;

/**
 * The motions that the times leave possible, by the Monte Carlo method (JCGM 101:2008, 6.4.9: Student's distribution
 * about a fit). Whether, and by how much, the ramps are rounded is not known: every magnitude of a rounding is as likely as
 * another, and the times weigh it against steady ramps (JCGM 101:2008, clause 6.2, Bayes' theorem).
 * Null where the times do not tell speed, acceleration and pause apart.
 */
export function possibleMotions(run: ShuttleRun): PossibleMotions | null {
  const steady = fitShuttles(run, 0);
  const roundedFits = fitsOfRoundings(run, steady?.parameters);
  const weighted = weigh(steady, roundedFits);
  const best = weighted.toSorted((one, other) => other.weight - one.weight)[0]?.fit;
  if (best === undefined) return null;
  const later = fitShuttles(run, best.rounding, best.parameters, run.clock.accuracy);
  const shift = best.parameters.map((value, index) => (later?.parameters[index] ?? value) - value);
  const rounded = weighted.reduce((sum, { fit, weight }) => sum + (fit.rounding > 0 ? weight : 0), 0);
  return { motions: drawMotions(weighted, shift, run), best, rounded };
}

/** Fits over roundings, ascending, closer together around the best. */
function fitsOfRoundings(run: ShuttleRun, start: readonly number[] | undefined): ShuttleFit[] {
  const { shortest, longest, ratio } = roundings;
  const count = Math.round(Math.log(longest / shortest) / Math.log(ratio));
  let fits: ShuttleFit[] = [];
  for (let index = 0; index <= count; index++) {
    const fit = fitShuttles(run, shortest * ratio ** index, fits.at(-1)?.parameters ?? start);
    if (fit !== null) fits.push(fit);
    if (fit !== null && !isFull(fit, run)) break;
  }
  for (let refinement = 0; refinement < refinements; refinement++) fits = refined(run, fits);
  return fits;
}

/** Whether the acceleration builds up to its full value; with longer roundings nothing changes any more. */
function isFull(fit: ShuttleFit, run: ShuttleRun): boolean {
  return reachedAcceleration(fit, run) >= Math.exp(fit.parameters.at(-2) ?? Number.NaN);
}

/**
 * One node more, halfway, as a ratio, between the two neighbours that differ most in what counts, the reached
 * acceleration, as far as the times speak for one of them.
 */
function refined(run: ShuttleRun, fits: readonly ShuttleFit[]): ShuttleFit[] {
  const highest = Math.max(...fits.map(({ evidence }) => evidence));
  const reached = fits.map((fit) => Math.log(reachedAcceleration(fit, run)));
  const gains = fits.slice(1).map(({ evidence }, index) => {
    const better = Math.max(evidence, fits[index]?.evidence ?? evidence);
    return Math.exp(better - highest) * Math.abs((reached[index + 1] ?? 0) - (reached[index] ?? 0));
  });
  const gain = Math.max(...gains);
  if (!(gain > leastGain)) return [...fits];
  const widest = gains.indexOf(gain);
  const [low, high] = [fits[widest], fits[widest + 1]];
  if (low === undefined || high === undefined) return [...fits];
  const added = fitShuttles(run, Math.sqrt(low.rounding * high.rounding), low.parameters);
  return added === null ? [...fits] : fits.toSpliced(widest + 1, 0, added);
}

interface WeightedFit {
  readonly fit: ShuttleFit;
  /** Fits for the next shorter and the next longer rounding. */
  readonly beside: readonly [below: ShuttleFit, above: ShuttleFit];
  /** Probability; all add up to 1. */
  readonly weight: number;
}

function weigh(steady: ShuttleFit | null, roundedFits: readonly ShuttleFit[]): WeightedFit[] {
  const spans = spansOf(roundedFits.map(({ rounding }) => Math.log(rounding)));
  const whole = Math.log(roundings.longest / roundings.shortest);
  const all = [
    ...(steady === null ? [] : [{ fit: steady, beside: [steady, steady] as const, prior: steadyShare }]),
    ...roundedFits.map((fit, index) => ({
      fit,
      beside: [roundedFits[index - 1] ?? fit, roundedFits[index + 1] ?? fit] as const,
      prior: ((1 - steadyShare) * (spans[index] ?? 0)) / whole,
    })),
  ];
  const highest = Math.max(...all.map(({ fit }) => fit.evidence));
  const odds = all.map(({ fit, prior }) => prior * Math.exp(fit.evidence - highest));
  const sum = odds.reduce((total, each) => total + each, 0);
  return all.map(({ fit, beside }, index) => ({ fit, beside, weight: (odds[index] ?? 0) / sum }));
}

/** What of the logarithmic scale each node stands for: up to halfway to its neighbours. */
function spansOf(nodes: readonly number[]): number[] {
  const edge = Math.log(roundings.ratio);
  return nodes.map((node, index) => {
    const [below = node - edge, above = node + edge] = [nodes[index - 1], nodes[index + 1]];
    return (above - below) / 2;
  });
}

/** Draws about the fits, as many of each as its weight asks; `shift` is what the largest error of the clock does. */
function drawMotions(
  weighted: readonly WeightedFit[],
  shift: readonly number[],
  { speeds }: ShuttleRun,
): DrawnMotions {
  const random = randomSource('motionTiming');
  const drawn = shift.map(() => new Float64Array(draws));
  const rounding = new Float64Array(draws);
  let index = 0;
  let upTo = 0;
  for (const each of weighted) {
    upTo += each.weight;
    const end = Math.min(draws, Math.round(upTo * draws));
    for (; index < end; index++) rounding[index] = drawMotion(each, shift, random, drawn, index);
  }
  const column = (place: number) => drawn.at(place)?.subarray(0, index) ?? new Float64Array();
  return {
    count: index,
    speed: column(speeds.length - 1).map(Math.exp),
    acceleration: column(-2).map(Math.exp),
    pause: column(-1).map((milliseconds) => milliseconds / 1000),
    rounding: rounding.subarray(0, index),
  };
}

/**
 * Draws a rounding up to halfway to a neighbour's, with the parameters that lie as far on the way, and their scatter. The
 * parameters go into the columns of `drawn`; the rounding, in s, is given back.
 */
function drawMotion(
  { fit, beside: [below, above] }: WeightedFit,
  shift: readonly number[],
  random: RandomSource,
  drawn: readonly Float64Array[],
  index: number,
): number {
  const { parameters, factor, degreesOfFreedom, rounding } = fit;
  const side = random.uniform() - 0.5;
  const other = side < 0 ? below : above;
  const way = Math.abs(side);
  for (const column of drawn) column[index] = random.normal();
  const spread = Math.sqrt(degreesOfFreedom / (2 * random.gamma(degreesOfFreedom / 2)));
  const late = 2 * random.uniform() - 1;
  // From the last row on: a row needs the normal numbers of those before it.
  for (let row = drawn.length - 1; row >= 0; row--) {
    const cells = factor[row] ?? [];
    const value = parameters[row] ?? Number.NaN;
    let off = 0;
    for (let place = 0; place <= row; place++) off += (cells[place] ?? 0) * (drawn[place]?.[index] ?? 0);
    const between = way * ((other.parameters[row] ?? value) - value);
    const column = drawn[row];
    if (column !== undefined) column[index] = value + between + off * spread + late * (shift[row] ?? 0);
  }
  return rounding === 0 ? 0 : rounding * (other.rounding / rounding) ** way;
}
